// What the program lays over the table in its own colour: what is chosen, what is wet, the reading tag.
#include <algorithm>

#include <QPainter>

#include "ui/table/hand_words.h"
#include "ui/table/light_table.h"
#include "ui/table/overlay.h"
#include "ui/tools/hit.h"

namespace crosstick::table {

QPointF LightTable::screen(geodesy::PlanePoint inPlan) const {
    const Spot spot = spotOf(inPlan).value_or(Spot{-1e6, -1e6});
    return {spot.x, spot.y};
}

std::vector<QPointF> LightTable::screen(const std::vector<geodesy::PlanePoint>& inPlan) const {
    std::vector<QPointF> spots;
    spots.reserve(inPlan.size());
    for (const geodesy::PlanePoint p : inPlan) {
        spots.push_back(screen(p));
    }
    return spots;
}

QPointF LightTable::handSpot() const {
    if (typedHand_) {
        return screen(*typedHand_);
    }
    return snap_ ? screen(snap_->at) : pointer_;
}

void LightTable::paintChosen(QPainter& painter, const Palette& colours) {
    const auto& selection = work_.selection();
    for (std::size_t n = 0; n < selection.size(); ++n) {
        const std::vector<QPointF> spots = screen(pointsOf(work_.plan(), selection[n]));
        if (spots.empty()) {
            paintHandles(painter, blockCorners(selection[n]), colours);
        } else if (spots.size() > 1 || n > 0) {
            paintHandles(painter, spots, colours);
        }
        if (n == 0 && !spots.empty()) {
            // The point that keys would move, else the true spot.
            const std::size_t held = std::min(tool_->heldPoint(selection[n]).value_or(0), spots.size() - 1);
            paintThreads(painter, view_.place({spots[held].x(), spots[held].y()}), view_, *faces_, colours);
            paintCrossHair(painter, spots[held], colours);
        }
    }
}

void LightTable::paintWetLines(QPainter& painter, const tools::Wet& wet, const Palette& colours) {
    for (const plan::Points& line : wet.others) {
        paintOther(painter, screen(line), colours);
    }
    paintWet(painter, screen(wet.line), wet.closes, colours);
    paintHandles(painter, screen(wet.marks), colours);
    if (wet.rose) {
        paintRose(painter, screen(wet.rose->at), *wet.rose, view_, *faces_, colours);
    }
}

void LightTable::paintInHand(QPainter& painter, const Palette& colours) {
    const tools::Wet wet = tool_->wet();
    paintWetLines(painter, wet, colours);
    if (!pointerInside_ && !typedHand_) {
        return;  // what is wet is seen while the hand is elsewhere
    }
    const QPointF hand = handSpot();
    paintThreads(painter, view_.place({hand.x(), hand.y()}), view_, *faces_, colours);
    paintCrossHair(painter, hand, colours);
    const plan::FilmPtr film = work_.workingFilm() ? work_.plan().film(*work_.workingFilm()) : nullptr;
    paintTag(painter, hand, tagFor(work_, wet, tool_->hint(), film ? film->name : std::string{}), view_, *faces_,
             colours);
}

void LightTable::paintOverlay(QPainter& painter, const Palette& colours) {
    paintStaleTraces(painter, colours);
    for (const Guide& guide : guides_) {
        paintGuide(painter, guide, view_, *faces_, colours);
    }
    if (mark_) {
        const Spot spot = view_.spot(*mark_);
        paintThreads(painter, *mark_, view_, *faces_, colours);
        paintCrossHair(painter, {spot.x, spot.y}, colours);
    }
    if (!drawing_) {
        paintChosen(painter, colours);
        paintWetLines(painter, tool_->wet(), colours);
    }
    if (drawing_ && (pointerInside_ || typedHand_ || tool_->isBusy())) {
        paintInHand(painter, colours);
    } else if (pointerInside_ && work_.workingFilm() && !panFrom_) {
        if (const plan::FilmPtr film = work_.plan().film(*work_.workingFilm())) {
            const std::string told = tool_->hint();
            const std::string name = told.empty() ? film->name : film->name + " \u00b7 " + told;
            paintFilmName(painter, pointer_, {name, film->pinned}, view_, *faces_, colours);
        }
    }
    if (snap_ && pointerInside_ && !typedHand_) {
        const std::string name = tools::nameOf(work_.plan(), snap_->item);
        paintSnap(painter, screen(snap_->at), snapWord(*snap_, name), view_, *faces_, colours);
    }
}

}  // namespace crosstick::table
