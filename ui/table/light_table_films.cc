// What of the painted films lies under the hand.
#include <algorithm>
#include <utility>

#include "ui/table/light_table.h"
#include "ui/table/rim_painter.h"
#include "ui/table/stale_marks.h"
#include "ui/table/touch.h"

namespace crosstick::table {
namespace {

constexpr double kInsetMargin = 28;
constexpr double kBeside = 3;  ///< pixels beside a symbol or a label that still mean it

tools::Touched::What touchedAs(symbols::Part::What what) {
    using What = tools::Touched::What;
    return what == symbols::Part::What::Letters   ? What::Letters
           : what == symbols::Part::What::Figures ? What::Figures
                                                  : What::Symbol;
}

}  // namespace

/// Tells of the films as they are painted now, however they are painted later.
tools::Touch LightTable::touch() const {
    using Answer = std::optional<tools::Touched>;
    const Metres beside(kBeside / view_.zoom().value());
    return [this, beside, films = films_.picture().films](geodesy::PlanePoint at,
                                                          const plan::ItemId& except) -> Answer {
        const auto place = films ? onGrid(at) : std::nullopt;
        const auto lying = place ? lyingAt(*films, *place, except, beside) : std::nullopt;
        const auto stands = lying ? work_.grid()->inPlan(lying->at) : Result<geodesy::PlanePoint>();
        if (!lying || !stands) {
            return std::nullopt;
        }
        return tools::Touched{lying->item, lying->film, touchedAs(lying->what), lying->isAside, *stands, lying->leg};
    };
}

/// The frame of the working film, as it is painted.
const film::Frame* LightTable::workingFrame() const {
    const auto& films = films_.picture().films;
    return films && !films->empty() ? &films->back().frame : nullptr;
}

/// An inset that begins to be worked on fills the table; afterwards the table is looked at as before.
void LightTable::lookAtInset() {
    const plan::FilmPtr film = work_.workingFilm() ? work_.plan().film(*work_.workingFilm()) : nullptr;
    const std::optional<plan::FilmId> inset = film && film->inset ? std::optional(film->id) : std::nullopt;
    if (inset == std::exchange(inset_, inset)) {
        return;
    }
    if (inset) {
        beforeInset_ = beforeInset_.value_or(view_);
        const plan::Registration& place = film->inset->place;
        fitWanted_ = false;
        setView(View::fitting({place.southWest, place.northEast}, insideRim(width(), height()), kInsetMargin, kMost,
                              view_.up()));
    } else if (beforeInset_) {
        setView(beforeInset_->in(view_.area()));
        beforeInset_.reset();
    }
}

/// Where higher's things lie now, beside what was traced from them before, on films that are seen.
void LightTable::paintStaleTraces(QPainter& painter, const Palette& colours) {
    const auto films = work_.filmsSeen();
    for (const files::StaleTrace& stale : work_.staleTraces()) {
        const bool isSeen = std::any_of(films.begin(), films.end(),
                                        [&](const plan::FilmPtr& film) { return plan::isShownOn(*film, stale.copy); });
        if (!isSeen || stale.moved == Metres(0)) {
            continue;
        }
        std::vector<QPointF> line;
        for (const geodesy::PlanePoint p : stale.now) {
            if (const auto spot = spotOf(p)) {
                line.emplace_back(spot->x, spot->y);
            }
        }
        paintStale(painter, line, isRing(*stale.source) ? Ends::Closed : Ends::Open, staleTag(stale), view_, *faces_,
                   colours);
    }
}

std::optional<drawing::Point> LightTable::onPaper(geodesy::PlanePoint inPlan) const {
    const film::Frame* frame = workingFrame();
    const auto place = frame != nullptr ? onGrid(inPlan) : std::nullopt;
    return place ? std::optional(frame->gridToFilm(*place)) : std::nullopt;
}

/// Corners of a block that lies on the paper, on the table.
std::vector<QPointF> LightTable::blockCorners(const plan::ItemId& item) const {
    const plan::MeasurePtr measure = work_.plan().measure(item);
    std::vector<QPointF> corners;
    if (!measure || measure->anchor != plan::Anchor::Paper || !films_.picture().films) {
        return corners;
    }
    for (const FilmInk& film : *films_.picture().films) {
        for (const std::size_t n : film.shown) {
            const symbols::EngravedItem& inked = film.engraved->items[n];
            if (inked.item == item && !inked.parts.empty()) {
                for (const drawing::Point corner : inked.parts.front().box.corners()) {
                    const Spot spot = view_.spot(film.frame.filmToGrid(corner));
                    corners.emplace_back(spot.x, spot.y);
                }
            }
        }
    }
    return corners;
}

}  // namespace crosstick::table
