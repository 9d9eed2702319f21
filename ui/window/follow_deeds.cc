// What is read off the printed sheet: lines, handrails, ties.
#include "core/drafting/along.h"
#include "core/terrain/faults.h"
#include "core/terrain/follow_sheet.h"
#include "core/terrain/tie.h"
#include "ui/tools/follow_tool.h"
#include "ui/tools/spot_tool.h"
#include "ui/window/window.h"

namespace crosstick::window {

using work::Course;
using work::GivingUp;
using work::Lane;

namespace {

/// The sheets whose copies are there: somebody's film before the maps that it lies on.
std::vector<terrain::SheetCopy> copiesOf(const work::Work& work) {
    std::vector<terrain::SheetCopy> copies;
    for (const bool films : {true, false}) {
        for (const plan::SheetPtr& sheet : work.committed().sheets()) {
            const work::SheetGround* ground = work.sheetGrounds().of(sheet->id);
            if (sheet->asFilm.has_value() == films && ground != nullptr && !ground->copy().empty()) {
                copies.push_back({ground->copy(), *sheet});
            }
        }
    }
    return copies;
}

}  // namespace

void Window::followMap(Following what) {
    if (!hasFilmToDrawOn()) {
        return;
    }
    if (copiesOf(work_).empty() && (work_.sheetGrounds().isReading() || !drawnFirst_)) {
        return say(work_.sheetGrounds().isReading()
                       ? tr("The sheet is still being prepared. Follow it when it is there.")
                       : tr("There is no sheet on the table to follow. What is drawn can be: Draw, Tools."));
    }
    std::optional<tools::Rail> rail;
    if (what != Following::TheLine) {
        rail = tools::Rail{[this] { return handrail_; }};
        rail->side = what == Following::OnTheLeft    ? std::optional(terrain::Side::Left)
                     : what == Following::OnTheRight ? std::optional(terrain::Side::Right)
                                                     : std::nullopt;
    }
    takeTool(std::make_unique<tools::FollowTool>(
        *measures::find("free-line"),
        [this](geodesy::PlanePoint from, geodesy::PlanePoint to, const std::optional<terrain::Vein>& like,
               const std::function<void(tools::FollowTool::Found)>& then) { seekPrinted(from, to, like, then); },
        std::move(rail)));
}

/// How far a handrail runs beside what it follows, until it is told otherwise.
void Window::askForHandrail() {
    question_->ask(tr("Handrail at how many metres:"), QString::number(handrail_.value()),
                   [this](const QString& typed) -> std::optional<QString> {
                       bool isNumber = false;
                       const double metres = typed.toDouble(&isNumber);
                       if (!isNumber || !(metres >= 1 && metres <= 10000)) {
                           return tr("Metres from 1 to 10000.");
                       }
                       handrail_ = Metres(metres);
                       table_->renewTool();
                       return std::nullopt;
                   });
}

/// What is drawn between the two places, where that is asked for or nothing is printed; false where nothing is.
bool Window::seekDrawn(geodesy::PlanePoint from, geodesy::PlanePoint to,
                       const std::function<void(Result<terrain::FollowedGround>)>& then) {
    auto found = drafting::drawnBetween(work_.committed(), work_.filmsSeen(), from, to, table_->reach());
    if (found) {
        then(terrain::FollowedGround{std::move(found->line), std::nullopt});
    }
    return found.has_value();
}

void Window::seekPrinted(geodesy::PlanePoint from, geodesy::PlanePoint to, const std::optional<terrain::Vein>& like,
                         const std::function<void(Result<terrain::FollowedGround>)>& then) {
    say({});
    if (drawnFirst_ && seekDrawn(from, to, then)) {
        return;
    }
    work_.errands().run(
        Lane::Makings, tr("Looking for the printed line"), GivingUp::Allowed,
        [copies = copiesOf(work_), plane = work_.committed().planeCrs(),
         clicks = terrain::Clicks{from, to, table_->reach()},
         like](Course&) { return terrain::followOnSheets(copies, plane, clicks, like); },
        [this, then](Result<terrain::FollowedGround> found) {
            then(std::move(found));
            table_->renewTool();
        },
        [this, then] {
            then(fail(terrain::kGivenUp));
            table_->renewTool();
        });
}

/// The next click tells what the selected point is tied to.
void Window::tieSelected() {
    const auto selected = work_.selected();
    const plan::MeasurePtr point = selected ? work_.committed().measure(*selected) : nullptr;
    if (!point || point->points.size() != 1 || point->anchor != plan::Anchor::Ground) {
        return say(tr("Select a route point first, then click what stands near it."));
    }
    say({});
    layTrayAway();
    table_->setTool(
        std::make_unique<tools::SpotTool>("click what a person recognises", tools::SpotTool::On::Printed,
                                          [this, id = point->id](geodesy::PlanePoint thing) { askForTie(id, thing); }));
    table_->setFocus();
}

void Window::askForTie(const plan::ItemId& point, geodesy::PlanePoint thing) {
    question_->ask(
        tr("What stands there:"), tr("road junction"),
        [this, point, thing](const QString& typed) -> std::optional<QString> {
            const plan::MeasurePtr measure = work_.committed().measure(point);
            if (typed.trimmed().isEmpty() || !measure || measure->points.empty() || work_.grid() == nullptr) {
                return tr("A word or two for what stands there, as it will be read on the card.");
            }
            const auto from = work_.grid()->onGrid(thing);
            const auto to = work_.grid()->onGrid(measure->points.front());
            if (!from || !to) {
                return outside_.say(from ? to.error() : from.error());
            }
            const std::string tie = terrain::tieWords(typed.trimmed().toStdString(), *from, *to);
            work_.commit(terrain::withTie(work_.committed(), point, tie), "tie a point");
            say(QString::fromStdString(tie));
            return std::nullopt;
        });
}

}  // namespace crosstick::window
