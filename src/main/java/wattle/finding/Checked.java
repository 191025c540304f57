package wattle.finding;

import java.util.List;

/** A result and what was noticed while making it; the value is usable even when there are errors. */
public record Checked<T>(T value, List<Finding> findings) {
  public Checked {
    findings = List.copyOf(findings);
  }

  public boolean hasErrors() {
    return findings.stream().anyMatch(f -> f.severity() == Severity.ERROR);
  }
}
