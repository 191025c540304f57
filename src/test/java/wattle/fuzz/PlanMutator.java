package wattle.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Plans of the project changed so that most of each is still well formed: the texts that people have while they type. */
final class PlanMutator {
  private static final Pattern TOKEN = Pattern.compile("\"[^\"\\n]*\"|[\\p{L}_][\\p{L}_0-9.-]*|[0-9]+(?:\\.[0-9]+)?|--|[^\\s]|\\s+");
  private static final List<String> FIGURES = List.of("0", "1", "-1", "0.5", "3", "14", "1000000", "99999999999999999999", "0.0000001");
  private static final int LARGEST = 6000;

  private static final int SMALL = 900;

  private final List<String> corpus;
  private final List<String> little;
  private final List<String> words;

  private PlanMutator(List<String> corpus) {
    this.corpus = corpus;
    little = corpus.stream().filter(t -> t.length() < SMALL).toList();
    words = corpus.stream().flatMap(t -> tokens(t).stream()).filter(w -> !w.isBlank()).distinct().toList();
  }

  /** Over the plans below these folders that are not larger than a person types in an hour. */
  static PlanMutator of(List<Path> folders) throws IOException {
    List<String> corpus = new ArrayList<>();
    for (Path folder : folders) {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path plan : files.filter(f -> f.toString().endsWith(".wattle")).sorted().toList()) {
          String text = Files.readString(plan);
          if (text.length() < LARGEST) {
            corpus.add(text);
          }
        }
      }
    }
    return new PlanMutator(List.copyOf(corpus));
  }

  /** A mutant; the same for the same random numbers. */
  String mutant(Random random) {
    return mutant(any(corpus, random), random);
  }

  /** A mutant of a plan of a few lines but for one in sixteen, since time goes with length. */
  String small(Random random) {
    return random.nextInt(16) == 0 ? mutant(random) : mutant(any(little, random), random);
  }

  private String mutant(String plan, Random random) {
    List<String> tokens = new ArrayList<>(tokens(plan));
    int changes = 1 + random.nextInt(4);
    for (int i = 0; i < changes && !tokens.isEmpty(); i++) {
      change(tokens, random);
    }
    return String.join("", tokens);
  }

  private void change(List<String> tokens, Random random) {
    int at = random.nextInt(tokens.size());
    switch (random.nextInt(8)) {
      case 0 -> tokens.remove(at);
      case 1 -> tokens.add(at, tokens.get(random.nextInt(tokens.size())));
      case 2 -> tokens.set(at, any(words, random));
      case 3 -> tokens.set(figure(tokens, at), any(FIGURES, random));
      case 4 -> {
        int end = Math.min(tokens.size(), at + 1 + random.nextInt(30));
        tokens.subList(at, end).clear();
      }
      case 5 -> {
        List<String> other = tokens(any(corpus, random));
        int from = random.nextInt(Math.max(1, other.size()));
        tokens.addAll(at, other.subList(from, Math.min(other.size(), from + 40)));
      }
      case 6 ->
        tokens.set(at, any(List.of("{", "}", "\"", "\n", ",", "--", "(", ")", "+", "\u00e9", "\ud83d\udca1", "\u202e", "\u0000"), random));
      default -> {
        String swapped = tokens.get(at);
        int other = random.nextInt(tokens.size());
        tokens.set(at, tokens.get(other));
        tokens.set(other, swapped);
      }
    }
  }

  /** The next figure from a place on; the place itself where none follows. */
  private static int figure(List<String> tokens, int from) {
    for (int i = from; i < tokens.size(); i++) {
      if (Character.isDigit(tokens.get(i).charAt(0))) {
        return i;
      }
    }
    return from;
  }

  private static String any(List<String> of, Random random) {
    return of.get(random.nextInt(of.size()));
  }

  private static List<String> tokens(String text) {
    List<String> tokens = new ArrayList<>();
    Matcher token = TOKEN.matcher(text);
    while (token.find()) {
      tokens.add(token.group());
    }
    return tokens;
  }
}
