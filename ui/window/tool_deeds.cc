// The hand's tools: wiping, ending lines, ruler, polar points, fixes, strokes that become a measure.
#include "core/drafting/bearing.h"
#include "core/drafting/renaming.h"
#include "core/geodesy/faults.h"
#include "ui/look/spoken.h"
#include "ui/tools/fix_tool.h"
#include "ui/tools/freehand_tool.h"
#include "ui/tools/hit.h"
#include "ui/tools/meeting_tool.h"
#include "ui/tools/place_tool.h"
#include "ui/tools/ruler_tool.h"
#include "ui/tools/spot_tool.h"
#include "ui/tools/wipe_tool.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

constexpr Metres kAStep{100};  ///< northward, to learn the norths at a place

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

/// "Wipe off: 3 whole, 2 in part (1 of these on other films too)?"
QString wipeWords(const drafting::Wiping& wiping) {
    QStringList parts;
    if (wiping.whole > 0) {
        parts << Window::tr("%1 whole").arg(wiping.whole);
    }
    if (wiping.partly > 0) {
        parts
            << (wiping.elsewhere > 0
                    ? Window::tr("%1 in part (%2 of these on other films too)").arg(wiping.partly).arg(wiping.elsewhere)
                    : Window::tr("%1 in part").arg(wiping.partly));
    }
    const QString stay = wiping.left > 0 ? Window::tr("; %1 that cannot be parted stay").arg(wiping.left) : QString();
    return Window::tr("Wipe off: %1?").arg(parts.join(QStringLiteral(", ")) + stay);
}

}  // namespace

void Window::takeTool(std::unique_ptr<tools::Tool> tool) {
    say({});
    work_.select(std::nullopt);
    detailsWanted_ = false;  // the table is what a hand that draws needs
    arrange();
    layTrayAway();
    table_->setTool(std::move(tool));
    table_->setFocus();
}

Scale Window::workingScale() const {
    const plan::FilmPtr film = work_.workingFilm() ? work_.plan().film(*work_.workingFilm()) : nullptr;
    const plan::SheetPtr sheet = film ? work_.plan().groundSheet(*film) : nullptr;
    return film && film->scale ? *film->scale : sheet ? sheet->scale : Scale{};
}

void Window::drawFreehand() {
    if (hasFilmToDrawOn()) {
        // Half a pen: what is left out is hidden under the ink.
        const double pen = work_.plan().gauge(*work_.plan().film(*work_.workingFilm())).pen;
        takeTool(std::make_unique<tools::FreehandTool>(*measures::find("free-line"),
                                                       onGround(PaperMm(pen / 2), workingScale())));
    }
}

void Window::wipePart() {
    if (hasFilmToDrawOn()) {
        takeTool(std::make_unique<tools::WipePartTool>());
    }
}

void Window::wipeRegion() {
    if (hasFilmToDrawOn()) {
        takeTool(std::make_unique<tools::WipeRegionTool>(
            [this](const drafting::Wiping& wiping) { askToWipe(wiping, "wipe a region"); }));
    }
}

void Window::wipeFilm() {
    if (hasFilmToDrawOn()) {
        askToWipe(drafting::filmWiped(work_.committed(), *work_.workingFilm()), "wipe a film");
    }
}

/// What would go is told first; the plan as it was then must still be the present one.
void Window::askToWipe(const drafting::Wiping& wiping, const std::string& caption) {
    if (wiping.isNothing()) {
        table_->setTool(nullptr);
        return say(wiping.left > 0 ? tr("Nothing there can be wiped in part: choose it and press Del.")
                                   : tr("Nothing of the working film lies there."));
    }
    const QString yes = tr("wipe");
    question_->ask(
        wipeWords(wiping), yes,
        [this, wiping, caption, yes, before = work_.committed()](const QString& typed) -> std::optional<QString> {
            if (typed.trimmed() != yes) {
                return tr("Enter with \"%1\" wipes, Escape leaves all as it is.").arg(yes);
            }
            if (!(before == work_.committed())) {
                return tr("The plan has changed meanwhile. Leave this and draw the region again.");
            }
            table_->setTool(nullptr);
            work_.commit(wiping.plan, caption);
            return std::nullopt;
        });
}

void Window::endOnAnother() {
    if (hasFilmToDrawOn()) {
        takeTool(std::make_unique<tools::MeetingTool>());
    }
}

void Window::measure() {
    if (!work_.isOpen() || work_.grid() == nullptr) {
        return;
    }
    takeTool(std::make_unique<tools::RulerTool>(
        tools::RulerWays{[this](geodesy::PlanePoint from, geodesy::PlanePoint to) -> std::optional<tools::Reading> {
                             const auto figures = work_.figuresBetween(from, to);
                             if (!figures || figures->legs.empty() || figures->legs.front().pieces.empty()) {
                                 return std::nullopt;
                             }
                             const movement::Piece& piece = figures->legs.front().pieces.front();
                             return tools::Reading{piece.gridAzimuth, piece.magneticAzimuth, piece.trueAzimuth,
                                                   piece.mapDistance, piece.groundDistance};
                         },
                         [this] { return work_.angles(); }, workingScale()}));
}

Result<drafting::Norths> Window::northsAt(geodesy::PlanePoint inPlan) const {
    const auto figures = work_.figuresBetween(inPlan, {inPlan.easting, inPlan.northing + kAStep});
    return figures.map([](const movement::RouteFigures& f) { return drafting::Norths{f.gm.angle, f.gm.convergence}; });
}

/// From the last point of what is being drawn, else from what is chosen, else from where the next click tells.
void Window::askForPolar() {
    if (!hasFilmToDrawOn() || work_.grid() == nullptr) {
        return;
    }
    if (const auto from = table_->measuredFrom()) {
        return askForPolarFrom(*from);
    }
    takeTool(std::make_unique<tools::SpotTool>("click the point to measure from", tools::SpotTool::On::Drawn,
                                               [this](geodesy::PlanePoint from) { askForPolarFrom(from); }));
}

void Window::askForPolarFrom(geodesy::PlanePoint from) {
    question_->ask(tr("Azimuth and distance from there (M, G or T behind the azimuth):"), QString(),
                   [this, from](const QString& typed) -> std::optional<QString> {
                       const auto place = polarPlace(from, typed.toStdString());
                       if (!place) {
                           return outside_.say(place.error());
                       }
                       if (table_->isDrawing()) {
                           table_->press(*place);
                       } else {
                           keepPoint(*place, "point by azimuth and distance");
                       }
                       return std::nullopt;
                   });
}

Result<geodesy::PlanePoint> Window::polarPlace(geodesy::PlanePoint from, const std::string& typed) const {
    const auto told = drafting::bearingAndDistanceTyped(typed, work_.angles());
    const auto norths = told ? northsAt(from) : Result<drafting::Norths>{};
    const auto onGrid = told && norths ? work_.grid()->onGrid(from) : Result<geodesy::PlanePoint>{};
    if (!told || !norths || !onGrid) {
        return tl::unexpected(!told ? told.error() : !norths ? norths.error() : onGrid.error());
    }
    const Degrees azimuth = drafting::gridAzimuth(told->bearing, *norths);
    return work_.grid()->inPlan(drafting::polarPlace(*onGrid, azimuth, told->distance));
}

void Window::keepPoint(geodesy::PlanePoint at, const std::string& caption) {
    plan::Measure point = tools::newMeasure(*measures::find("waypoint"), work_.committed(), work_.newId(), {at});
    const plan::ItemId id = point.id;
    work_.commit(plan::withMeasure(work_.committed(), std::move(point), *work_.workingFilm()), caption);
    work_.select(id);
}

void Window::fixPoint(Sighted from) {
    if (!hasFilmToDrawOn() || work_.grid() == nullptr) {
        return;
    }
    const bool isResection = from == Sighted::FromTheUnknown;
    const QString words = isResection ? tr("Azimuth from where you stand to this point:")
                                      : tr("Azimuth from this point to the one looked for:");
    takeTool(std::make_unique<tools::FixTool>(
        isResection ? "resection" : "intersection", *measures::find("waypoint"), gridWays(),
        [this, isResection, words](geodesy::PlanePoint known, const tools::FixTool::Then& then) {
            question_->ask(words, QString(),
                           [this, isResection, known, then](const QString& typed) -> std::optional<QString> {
                               const auto bearing = drafting::bearingTyped(typed.toStdString(), work_.angles());
                               const auto norths = bearing ? northsAt(known) : Result<drafting::Norths>{};
                               if (!bearing || !norths) {
                                   return outside_.say(bearing ? norths.error() : bearing.error());
                               }
                               const Degrees grid = drafting::gridAzimuth(*bearing, *norths);
                               then(isResection ? geodesy::backAzimuth(grid) : grid);
                               table_->renewTool();
                               return std::nullopt;
                           });
        }));
}

tools::GridWays Window::gridWays() {
    const auto by = [this](auto way) -> tools::GridWays::Way {
        return [this, way](geodesy::PlanePoint p) -> Result<geodesy::PlanePoint> {
            const movement::WorkGrid* grid = work_.grid();  // another one when the sheet has changed meanwhile
            return grid == nullptr ? fail(geodesy::kNoTransformation) : (grid->*way)(p);
        };
    };
    return {by(&movement::WorkGrid::onGrid), by(&movement::WorkGrid::inPlan)};
}

/// A stroke that was just drawn, or is being drawn, is what the menu or the tray names; else something new is begun.
bool Window::strokeBecomes(const measures::Entry& kind) {
    if (table_->endToolAs(kind)) {
        return true;
    }
    const plan::MeasurePtr measure =
        stroke_ && work_.selected() == stroke_ ? work_.committed().measure(*stroke_) : nullptr;
    if (!measure || !drafting::isPlain(*measure) || !drafting::mayBecome(*measure, kind)) {
        return false;
    }
    become(kind);
    return true;
}

void Window::become(const measures::Entry& kind) {
    if (const auto item = work_.selected()) {
        work_.commit(drafting::become(work_.committed(), *item, kind), "name a stroke");
        stroke_.reset();
        say(tr("It is %1 now. To draw another, undo this or choose it again.")
                .arg(text(tools::nameOf(work_.committed(), *item))));
    }
}

void Window::addBecomings(QMenu& menu) {
    const plan::MeasurePtr measure = work_.selected() ? work_.committed().measure(*work_.selected()) : nullptr;
    if (!measure || measure->anchor != plan::Anchor::Ground) {
        return;
    }
    QMenu* all = menu.addMenu(tr("Becomes"));
    std::map<measures::Group, QMenu*> groups;
    for (const measures::Entry& entry : measures::catalogue()) {
        if (entry.kind != measure->kind && drafting::mayBecome(*measure, entry)) {
            QMenu*& group = groups[entry.group];
            group = group == nullptr ? all->addMenu(look::spoken(measures::nameOf(entry.group))) : group;
            connect(group->addAction(look::spoken(entry.name)), &QAction::triggered, this,
                    [this, &entry] { become(entry); });
        }
    }
}

}  // namespace crosstick::window
