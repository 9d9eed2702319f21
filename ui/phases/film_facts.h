#pragma once

#include <set>

#include <QString>

#include "ui/work/work.h"

namespace crosstick::phases {

/// What the rail tells of a film, on its tab, on its card and to who listens.
struct FilmFacts {
    plan::FilmId film;
    QString name;
    int place = 1;         ///< in the stack, the lowest is 1
    std::set<int> phases;  ///< empty: all
    bool pinned = false;
    bool works = false;   ///< drawing goes on it
    bool ofPhase = true;  ///< of the chosen one
    bool seen = true;     ///< lies on the sheet now
    work::FilmLook look;
    std::size_t measures = 0;  ///< routes among them
    std::size_t unplaced = 0, assumed = 0, stale = 0;
    QString firstStale;  ///< "PL CHALK, higher moved it 120 m"
    friend bool operator==(const FilmFacts&, const FilmFacts&) = default;
};
[[nodiscard]] FilmFacts factsOf(const work::Work& work, const plan::Film& film);

[[nodiscard]] QString tintWord(work::Tint tint);  ///< "rose"; empty for none
/// "all phases", "phase 3", "phases 1 to 2", "phases 1, 3".
[[nodiscard]] QString phasesWords(const std::set<int>& phases);
/// What it is and how it lies: "MOVE, film 2, pinned, faded to 50 %, tinted rose, hidden".
[[nodiscard]] QString spoken(const FilmFacts& facts);
/// The second line of its card: "14 measures, you are drawing here".
[[nodiscard]] QString countLine(const FilmFacts& facts);

/// The third line: the one thing that most wants to be known, with its mark; none where nothing is out of the way.
struct StateLine {
    enum class Mark { None, Pin, HalvedSheet, DashedBox, PartedLines };
    Mark mark = Mark::None;
    QString words;
};
[[nodiscard]] StateLine stateLine(const FilmFacts& facts);

}  // namespace crosstick::phases
