#pragma once

#include <optional>
#include <string>
#include <vector>

#include <QPointF>
#include <QRectF>

#include "ui/press/faces.h"
#include "ui/table/palette.h"
#include "ui/table/view.h"
#include "ui/tools/tool.h"

class QPainter;

namespace crosstick::table {

// What the program adds to the table in its own colour; none of it ever prints.

/// What is wet: thin, ending at the hand.
void paintWet(QPainter& painter, const std::vector<QPointF>& line, bool closes, const Palette& colours);
/// Open cross-hair: four arms, so that the spot itself stays visible.
void paintCrossHair(QPainter& painter, QPointF at, const Palette& colours);
/// What is aimed at, or what would go: a thinner line of dashes.
void paintOther(QPainter& painter, const std::vector<QPointF>& line, const Palette& colours);
/// A small mark on what the hand is drawn to, with its word.
void paintSnap(QPainter& painter, QPointF at, const std::string& word, const View& view, const press::Faces& faces,
               const Palette& colours);
/// "CP 3", "on PL B", "tick", "grid".
[[nodiscard]] std::string snapWord(const drafting::Snap& snap, const std::string& name);
/// A protractor: ten degrees from tick to tick, grid north its zero, with the other norths beside it.
void paintRose(QPainter& painter, QPointF at, const tools::Rose& rose, const View& view, const press::Faces& faces,
               const Palette& colours);
/// Threads along the grid from a place to both rims, with its figures in tabs where they end.
void paintThreads(QPainter& painter, geodesy::PlanePoint place, const View& view, const press::Faces& faces,
                  const Palette& colours);
/// Open square handles on the points of what is selected.
void paintHandles(QPainter& painter, const std::vector<QPointF>& points, const Palette& colours);

/// The reading tag beside the hand: figures large, what they mean, what it will be. Flips before an edge.
struct Tag {
    std::string first, second, third;
};
void paintTag(QPainter& painter, QPointF at, const Tag& tag, const View& view, const press::Faces& faces,
              const Palette& colours);
/// A closed line of ours on the ground, with a word beside it.
struct Guide {
    std::vector<geodesy::PlanePoint> line;  ///< grid of the work
    std::string word;
    enum class Weight { Thin, Heavy } weight = Weight::Thin;
    friend bool operator==(const Guide&, const Guide&) = default;
};
void paintGuide(QPainter& painter, const Guide& guide, const View& view, const press::Faces& faces,
                const Palette& colours);
/// A small word beside the pointer: the working film's name, with a pin where nothing is drawn on it.
struct FilmWord {
    const std::string& name;
    bool pinned = false;
};
void paintFilmName(QPainter& painter, QPointF at, const FilmWord& film, const View& view, const press::Faces& faces,
                   const Palette& colours);
/// A sentence in the middle of a table that has nothing to show yet.
void paintSentence(QPainter& painter, const std::string& words, const View& view, const press::Faces& faces,
                   const Palette& colours);
/// A sentence in the middle of a table that has nothing to show yet.
void paintSentence(QPainter& painter, const std::string& words, const View& view, const press::Faces& faces,
                   const Palette& colours);

}  // namespace crosstick::table
