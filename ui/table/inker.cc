#include "ui/table/inker.h"

#include <algorithm>
#include <utility>

#include "core/film/inset.h"
#include "core/film/registration.h"
#include "core/plan/difference.h"
#include "ui/table/covered_labels.h"

namespace crosstick::table {
namespace {

/// Measures and routes that look otherwise than before: they themselves changed, or the figures on their legs.
std::set<plan::ItemId> changedItems(const Scene& before, const Scene& now, const plan::Difference& difference) {
    std::set<plan::ItemId> changed;
    const auto note = [&changed](const auto& changes) {
        for (const auto& change : changes) {
            changed.insert(change.after ? change.after->id : change.before->id);
        }
    };
    note(difference.measures);
    note(difference.routes);
    const auto compare = [&changed](const auto& some, const auto& others) {
        for (const auto& [route, figures] : some) {
            const auto other = others.find(route);
            if (other == others.end() || !(other->second == figures)) {
                changed.insert(route);
            }
        }
    };
    compare(before.figures, now.figures);
    compare(now.figures, before.figures);
    return changed;
}

/// Does everything on the table lie otherwise than before?
bool isOtherGround(const Scene& before, const Scene& now, const plan::Difference& difference) {
    return difference.identity || !difference.registration.isNone() || !difference.force.isNone() ||
           !difference.sheetOrder.isNone() || !difference.sheets.empty() ||
           before.plan.planeCrs() != now.plan.planeCrs() || before.angles != now.angles || before.pens != now.pens ||
           before.plan.heading().gauge != now.plan.heading().gauge;
}

std::vector<plan::FilmPtr> inOrder(const Scene& scene) {
    std::vector<plan::FilmPtr> films;
    plan::FilmPtr last;
    for (const plan::FilmId& id : scene.films) {
        plan::FilmPtr film = scene.plan.film(id);
        if (film && scene.working == id) {
            last = std::move(film);
        } else if (film) {
            films.push_back(std::move(film));
        }
    }
    if (last) {
        films.push_back(std::move(last));
    }
    return films;
}

/// On the table all films lie on the plan's first sheet, whatever they are printed for.
plan::Film laidOn(const plan::Film& film) {
    plan::Film onTable = film;
    onTable.groundSheet.reset();
    return onTable;
}

std::vector<drawing::Box> boxesOf(const drawing::Drawing& marks) {
    std::vector<drawing::Box> boxes;
    for (const drawing::Mark& mark : marks.marks) {
        boxes.push_back(drawing::extent({{mark}}));
    }
    return boxes;
}

/// From the top down: what a film above has inked at the same scale is left out below.
void inkOnce(std::vector<FilmInk>& films) {
    std::set<std::pair<double, plan::ItemId>> inked;
    for (std::size_t n = films.size(); n-- > 0;) {
        FilmInk& film = films[n];
        const double scale = film.frame.scale().denominator;
        film.shown.clear();
        for (std::size_t item = 0; item < film.engraved->items.size(); ++item) {
            if (inked.emplace(scale, film.engraved->items[item].item).second) {
                film.shown.push_back(item);
            }
        }
    }
}

}  // namespace

void Inker::forget(const Scene& scene) {
    if (!before_) {
        return;
    }
    const plan::Difference difference = plan::difference(before_->plan, scene.plan);
    if (isOtherGround(*before_, scene, difference)) {
        kept_.clear();
        link_.reset();
        return;
    }
    for (const plan::Change<plan::Film>& change : difference.films) {
        for (const plan::FilmPtr& film : {change.before, change.after}) {
            if (film) {
                kept_.erase(film->id);
            }
            if (film && film->inset) {  // its frame lies on its parent
                kept_.erase(film->inset->parent);
            }
        }
    }
    for (const plan::FilmId& film : scene.films) {
        if (before_->tinted.contains(film) != scene.tinted.contains(film)) {
            kept_.erase(film);
        }
    }
    const std::set<plan::ItemId> changed = changedItems(*before_, scene, difference);
    std::erase_if(kept_, [&changed](const auto& kept) {
        const auto& shows = kept.second.film->shows;
        return std::any_of(shows.begin(), shows.end(),
                           [&changed](const plan::Showing& showing) { return changed.contains(showing.item); });
    });
}

Result<FilmInk> Inker::inkOf(const Scene& scene, const plan::FilmPtr& film) {
    const plan::Film onTable = laidOn(*film);
    auto frame = film::Frame::over(scene.plan, onTable, link_);
    if (!frame) {
        return tl::unexpected(frame.error());
    }
    const auto& shared = scene.plan.registration();
    const plan::Registration* registration = film->inset ? &film->inset->place : shared ? &*shared : nullptr;
    drawing::Drawing ticks = registration != nullptr ? registerTicks(*registration, *frame) : drawing::Drawing{};
    const auto insets = film::insetFrames(scene.plan, onTable, *frame);
    if (!insets) {
        return tl::unexpected(insets.error());
    }
    std::vector<drawing::Box> reserved = boxesOf(ticks);
    reserved.insert(reserved.end(), insets->labels.begin(), insets->labels.end());
    ticks.append(insets->drawing);
    symbols::Engraving engraving{.plan = scene.plan,
                                 .film = onTable,
                                 .frame = *frame,
                                 .gauge = scene.plan.gauge(*film),
                                 .pens = scene.tinted.contains(film->id) ? symbols::PenMode::OnePen : scene.pens,
                                 .surface = symbols::Surface::LightTable,
                                 .reserved = std::move(reserved),
                                 .figures = scene.figures,
                                 .angles = scene.angles};
    auto engraved = std::make_shared<const symbols::EngravedFilm>(symbols::engrave(engraving));
    std::vector<drawing::Box> extents;
    extents.reserve(engraved->items.size());
    for (const symbols::EngravedItem& item : engraved->items) {
        extents.push_back(drawing::extent(item.drawing));
    }
    return FilmInk{film, std::move(*frame), std::move(engraved), std::move(extents), {}, std::move(ticks)};
}

Result<std::vector<FilmInk>> Inker::ink(const Scene& scene) {
    forget(scene);
    before_ = scene;
    std::vector<FilmInk> films;
    for (const plan::FilmPtr& film : inOrder(scene)) {
        if (!link_) {
            auto opened = geodesy::PlaneLink::between(scene.plan.planeCrs(), scene.plan.gridCrs(laidOn(*film)));
            if (!opened) {
                return tl::unexpected(opened.error());
            }
            link_ = std::make_shared<const geodesy::PlaneLink>(std::move(*opened));
        }
        auto kept = kept_.find(film->id);
        if (kept == kept_.end()) {
            auto ink = inkOf(scene, film);
            if (!ink) {
                return tl::unexpected(ink.error());
            }
            kept = kept_.emplace(film->id, std::move(*ink)).first;
        }
        films.push_back(kept->second);
    }
    inkOnce(films);
    leaveOutCovered(films);
    return films;
}

Result<std::vector<FilmInk>> inkFilms(const Scene& scene) {
    return Inker().ink(scene);
}

}  // namespace crosstick::table
