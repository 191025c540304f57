package wattle.lockout;

import java.util.List;
import java.util.Optional;
import wattle.library.Library;
import wattle.model.House;

/**
 * What has to be known before a place is worked on.
 *
 * @param place where the work is
 * @param title the place in the plan's own words
 * @param handles all of them must be open; in the order of panels and slots
 * @param unknown what the plan leaves open, so that handles may be missing; empty where nothing does
 * @param goesDead what loses its supply elsewhere when they are open, branch by branch
 * @param staysLive what keeps its voltage in the same boxes or beside them
 * @param proofs what to measure, box by box
 * @param warnings what would surprise somebody who opens the box
 */
public record Lockout(
    Place place,
    String title,
    List<Handle> handles,
    List<String> unknown,
    List<Dead> goesDead,
    List<Live> staysLive,
    List<Proof> proofs,
    List<String> warnings) {
  public Lockout {
    handles = List.copyOf(handles);
    unknown = List.copyOf(unknown);
    goesDead = List.copyOf(goesDead);
    staysLive = List.copyOf(staysLive);
    proofs = List.copyOf(proofs);
    warnings = List.copyOf(warnings);
  }

  /** Derives the lockout of a place. Pure; a house with mistakes gives a lockout whose {@code unknown} says so. */
  public static Lockout of(House house, Place place) {
    return new LockoutDeriver(house, place).derive();
  }

  /** The same in the terms of the code in force. */
  public Lockout inTermsOf(Library library) {
    List<Proof> named = proofs.stream()
        .map(p -> new Proof(p.at(), p.conductors().stream().map(c -> c.calledGround(library.groundTerm())).toList(), p.readings()))
        .toList();
    return new Lockout(
        place, title, handles, unknown, goesDead, staysLive, named, warnings.stream().map(library::inTerms).toList());
  }

  /**
   * What loses its supply.
   *
   * @param what title of a branch, or of a panel
   * @param devices titles with their rooms; those of the place itself are left out
   */
  public record Dead(String what, List<String> devices) {
    public Dead {
      devices = List.copyOf(devices);
    }
  }

  /**
   * What keeps its voltage.
   *
   * @param what the thing
   * @param from what feeds it
   * @param near how it is near: in the same box, room, raceway or panel
   */
  public record Live(String what, String from, String near) {}

  /**
   * What is measured at one place.
   *
   * @param at the box or panel
   * @param conductors what is in it
   * @param readings between which two, all of which must read nothing
   */
  public record Proof(String at, List<Conductor> conductors, List<Reading> readings) {
    public Proof {
      conductors = List.copyOf(conductors);
      readings = List.copyOf(readings);
    }

    /** What is in it, in words; conductors of one color are named by their cables. */
    public List<String> conductorTexts() {
      return conductors.stream().map(c -> c.text(isSharedColor(c.color))).toList();
    }

    private boolean isSharedColor(String color) {
      return conductors.stream().filter(c -> c.color.equals(color)).count() > 1;
    }
  }

  /**
   * A conductor in a box.
   *
   * @param branch name of the branch it belongs to
   * @param color of its insulation, or {@code bare}
   * @param role in the trade's words: {@code hot A}, {@code neutral}, {@code switch leg of hall.sw}
   * @param reidentified whether it is white and yet no neutral
   * @param cables boxes or panels at the far ends of the cables that it comes in here, joined to one conductor
   * @param inRaceway whether it comes in a raceway, and in no cable
   */
  public record Conductor(
      String branch, String color, String role, boolean reidentified, List<String> cables, boolean inRaceway) {
    public Conductor {
      cables = List.copyOf(cables);
    }

    /** The same, with a name for the ground of a branch. */
    private Conductor calledGround(String name) {
      return role.equals("ground") ? new Conductor(branch, color, name, reidentified, cables, inRaceway) : this;
    }

    /** The color, and where it is needed, the cables: {@code black (cable to F)}. */
    String looks(boolean byCable) {
      String one = inRaceway ? "raceway to " : "cable to ";
      String several = inRaceway ? "raceways to " : "cables to ";
      return byCable && !cables.isEmpty()
          ? color + " (" + (cables.size() == 1 ? one : several) + String.join(" and ", cables) + ")"
          : color;
    }

    /** {@code black (cable to F), hot A of counter}. */
    String text(boolean byCable) {
      return looks(byCable) + ", " + role + " of " + branch + (reidentified ? " (a white conductor that is not a neutral)" : "");
    }
  }

  /**
   * One measurement.
   *
   * @param liveVolts what it reads with everything on, nominally; 0 for two hots on one leg; absent where a leg is not known
   */
  public record Reading(String from, String to, Optional<Double> liveVolts) {}
}
