#include "ui/press/film_sheet.h"

#include <algorithm>
#include <utility>

#include "core/drawing/clip.h"
#include "core/film/block.h"
#include "core/film/inset.h"
#include "core/film/registration.h"
#include "core/film/set_layout.h"
#include "core/movement/gm_angle.h"
#include "ui/press/said.h"

namespace crosstick::press {
namespace {

constexpr double kRoundBlock = 0.8;  ///< of measures to the administrative block

/// What all films of a set have in common.
struct Common {
    plan::Plan plan;  ///< with window and ticks
    std::map<plan::ItemId, movement::RouteFigures> figures;
    std::optional<movement::GmAngle> gm;
    PaperMm legendRoom{0};
};

bool shows(const plan::Film& film, const plan::ItemId& item) {
    return std::any_of(film.shows.begin(), film.shows.end(),
                       [&](const plan::Showing& showing) { return showing.item == item; });
}

void noteOnce(std::vector<Error>& notes, const Error& error) {
    const bool known = std::any_of(notes.begin(), notes.end(), [&](const Error& e) { return e.fault == error.fault; });
    if (!known) {
        notes.push_back(error);
    }
}

geodesy::PlanePoint middleOf(const plan::Registration& window) {
    return {(window.southWest.easting + window.northEast.easting) / 2,
            (window.southWest.northing + window.northEast.northing) / 2};
}

Result<movement::GmAngle> gmInMiddle(const FilmsOrder& order, const plan::Registration& window) {
    const auto grid = movement::WorkGrid::of(order.plan);
    if (!grid) {
        return tl::unexpected(grid.error());
    }
    return movement::gmAngleAt(order.plan, *grid, middleOf(window), order.model, order.heights);
}

symbols::Engraving engravingOf(const FilmsOrder& order, const Common& common, const plan::Film& film,
                               const film::Frame& frame) {
    symbols::Engraving engraving{.plan = common.plan,
                                 .film = film,
                                 .frame = frame,
                                 .gauge = order.gauge.value_or(common.plan.gauge(film)),
                                 .pens = order.pens,
                                 .surface = symbols::Surface::Film,
                                 .reserved = {},
                                 .figures = {},
                                 .angles = order.angles};
    for (const auto& [route, figures] : common.figures) {
        if (shows(film, route)) {
            engraving.figures.emplace(route, figures);
        }
    }
    return engraving;
}

std::vector<film::LegendEntry> legendOf(const symbols::Engraving& engraving, symbols::LegendExtent extent) {
    std::vector<film::LegendEntry> entries;
    for (symbols::LegendRow& row : symbols::legend(engraving, extent)) {
        entries.push_back({std::move(row.sample), said(row.text)});
    }
    return entries;
}

Result<plan::Plan> withTicks(const plan::Plan& plan) {
    if (plan.registration()) {
        return plan;
    }
    return film::proposeRegistration(plan).map([&](plan::Registration&& proposed) {
        return std::move(plan::PlanBuilder(plan).registration(std::move(proposed))).build();
    });
}

Common commonOf(const FilmsOrder& order, const plan::Plan& plan, film::SetLayout& layout, std::vector<Error>& notes) {
    Common common{plan, {}, {}, PaperMm(0)};
    const auto gm = gmInMiddle(order, *common.plan.registration());
    if (gm) {
        common.gm = *gm;
    } else {
        noteOnce(notes, gm.error());
    }
    for (const plan::RoutePtr& route : order.plan.routes()) {
        auto figures = movement::routeFigures(order.plan, *route, order.model, order.heights);
        if (figures) {
            common.figures.emplace(route->id, std::move(*figures));
        } else {
            noteOnce(notes, figures.error());
        }
    }
    // Every film of the plan counts, printed now or not: the block is the same on all of them.
    for (const plan::FilmPtr& film : order.plan.films()) {
        const auto frame = layout.frame(*film, order.scale);
        if (frame) {
            common.legendRoom = std::max(
                common.legendRoom, film::legendRoom(legendOf(engravingOf(order, common, *film, *frame), order.legend)));
        }
    }
    return common;
}

/// The angle that the film's own route cards bear, so that all papers of a route say the same; else the window's.
std::optional<movement::GmAngle> gmOf(const plan::Film& film, const Common& common) {
    for (const plan::RoutePtr& route : common.plan.routes()) {
        const auto figures = common.figures.find(route->id);
        if (figures != common.figures.end() && shows(film, route->id)) {
            return figures->second.gm;
        }
    }
    return common.gm;
}

/// What files carry of the windows of a set, worked out once for films that share theirs: it costs as much as painting
/// a film.
class CarriedWindows {
  public:
    Result<geodesy::CarriedCrs> of(const film::Frame& frame) {
        const drawing::Box window = frame.window();
        const geodesy::PlanePoint low = frame.filmToGrid({window.left, window.bottom});
        const geodesy::PlanePoint high = frame.filmToGrid({window.right, window.top});
        if (!known_ || crs_ != frame.gridCrs() || low != low_ || high != high_) {
            auto carried = geodesy::carriedCrs(frame.gridCrs(),
                                               {low, {low.easting, high.northing}, high, {high.easting, low.northing}});
            if (!carried) {
                return carried;
            }
            known_ = std::move(*carried);
            crs_ = frame.gridCrs();
            low_ = low;
            high_ = high;
        }
        return *known_;
    }

  private:
    std::optional<geodesy::CarriedCrs> known_;
    std::string crs_;
    geodesy::PlanePoint low_, high_;
};

/// What is worked out from film to film of a set.
struct Progress {
    film::SetLayout& layout;
    CarriedWindows carried = {};
};

Result<GroundOnPage> groundOf(const FilmsOrder& order, const plan::Film& film, const film::Frame& frame,
                              const film::Page& page, CarriedWindows& windows) {
    const drawing::Box window = frame.window();
    const plan::SheetPtr sheet = order.plan.groundSheet(film);
    return windows.of(frame).map([&](geodesy::CarriedCrs&& carried) {
        return GroundOnPage{{window.left + page.windowAt.x, window.top + page.windowAt.y,
                             window.right + page.windowAt.x, window.bottom + page.windowAt.y},
                            std::move(carried),
                            sheet ? sheet->name : std::string{}};
    });
}

std::vector<ItemInks> inksOf(const symbols::EngravedFilm& marks) {
    std::vector<ItemInks> all;
    for (const symbols::EngravedItem& item : marks.items) {
        ItemInks one{item.item, {}};
        for (const drawing::Mark& mark : item.drawing.marks) {
            one.inks.insert(std::visit([](const auto& kind) { return kind.ink; }, mark));
        }
        all.push_back(std::move(one));
    }
    return all;
}

Result<FilmPage> compose(const FilmsOrder& order, const Common& common, Progress& progress, const plan::FilmPtr& film) {
    const auto frame = progress.layout.frame(*film, order.scale);
    if (!frame) {
        return tl::unexpected(frame.error());
    }
    symbols::Engraving engraving = engravingOf(order, common, *film, *frame);
    film::PageOrder pageOrder{common.plan, *film, *frame, order.papers};
    pageOrder.legend = legendOf(engraving, order.legend);
    pageOrder.legendRoom = common.legendRoom;
    pageOrder.gm = gmOf(*film, common);
    pageOrder.angles = order.angles;
    pageOrder.say = said;
    auto page = progress.layout.layOut(pageOrder);
    if (!page) {
        return tl::unexpected(page.error());
    }
    const auto insets = film::insetFrames(common.plan, *film, *frame);
    if (!insets) {
        return tl::unexpected(insets.error());
    }
    engraving.reserved = page->reserved;
    engraving.reserved.insert(engraving.reserved.end(), insets->labels.begin(), insets->labels.end());
    symbols::EngravedFilm marks = symbols::engrave(engraving);
    FilmPage out{film, frame->scale(),           frame->gridCrs(), std::move(*page), {},
                 {},   std::move(marks.remarks), inksOf(marks)};
    out.drawing = out.page.furniture;
    // The block lies on the film: lines that run under it end at its edge.
    drawing::Drawing lying = std::move(marks).all();
    lying.append(insets->drawing);
    out.drawing.append(
        drawing::cutAway(drawing::moved(std::move(lying), out.page.windowAt), out.page.block.grown(kRoundBlock)));
    return groundOf(order, *film, *frame, out.page, progress.carried).map([&out](GroundOnPage&& ground) {
        out.ground = std::move(ground);
        return std::move(out);
    });
}

}  // namespace

Result<std::vector<Error>> composeFilms(const FilmsOrder& order, const TakePage& take) {
    std::vector<Error> notes;
    const auto plan = withTicks(order.plan);
    if (!plan) {
        return tl::unexpected(plan.error());
    }
    film::SetLayout layout(*plan);
    const Common common = commonOf(order, *plan, layout, notes);
    Progress progress{layout};
    for (const plan::FilmPtr& film : order.films) {
        auto page = compose(order, common, progress, film);
        if (!page) {
            return tl::unexpected(page.error());
        }
        take(std::move(*page));
    }
    return notes;
}

Result<FilmSet> composeFilms(const FilmsOrder& order) {
    FilmSet set;
    auto notes = composeFilms(order, [&set](FilmPage&& page) { set.pages.push_back(std::move(page)); });
    if (!notes) {
        return tl::unexpected(notes.error());
    }
    set.notes = std::move(*notes);
    return set;
}

PdfPage pdfPage(const FilmPage& page) {
    return {page.page.paper, page.drawing, page.film->name, page.ground};
}

std::vector<PdfPage> pdfPages(const FilmSet& set) {
    std::vector<PdfPage> pages;
    for (const FilmPage& page : set.pages) {
        pages.push_back(pdfPage(page));
    }
    return pages;
}

PdfFacts pdfFacts(const plan::Plan& plan) {
    const plan::Heading& heading = plan.heading();
    Instant made{};
    if (heading.prepared) {
        made = *heading.prepared;
    } else if (heading.date.ok()) {
        made = std::chrono::sys_days(heading.date);
    }
    return {heading.name, heading.author, heading.marking, made};
}

}  // namespace crosstick::press
