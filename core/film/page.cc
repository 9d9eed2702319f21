#include "core/film/page.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/film/block.h"
#include "core/film/faults.h"
#include "core/film/furniture.h"
#include "core/film/ground_lines.h"
#include "core/film/lettering.h"
#include "core/film/placement.h"
#include "core/film/registration.h"
#include "core/film/window_span.h"

namespace crosstick::film {
namespace {

using drawing::Box;
using drawing::Point;

/// A tick in film millimetres with its drawing.
struct PlacedTick {
    geodesy::PlanePoint at;
    Point onFilm;
    TickDrawing mark;
};

std::vector<PlacedTick> ticksOf(const plan::Registration& registration, const Frame& frame) {
    const Box window = frame.window();
    const Point middle = window.middle();
    std::vector<PlacedTick> ticks;
    std::size_t lowerLeft = 0;
    double nearest = std::numeric_limits<double>::infinity();
    for (const geodesy::PlanePoint at : registration.ticks) {
        const Point p = frame.gridToFilm(at);
        if (!window.grown(0.01).contains(p)) {
            continue;
        }
        const double distance = std::hypot(p.x - window.left, p.y - window.bottom);
        if (distance < nearest) {
            nearest = distance;
            lowerLeft = ticks.size();
        }
        ticks.push_back({at, p, {}});
    }
    for (std::size_t n = 0; n < ticks.size(); ++n) {
        PlacedTick& tick = ticks[n];
        const Point inward{tick.onFilm.x > middle.x ? -1.0 : 1.0, tick.onFilm.y > middle.y ? -1.0 : 1.0};
        tick.mark = film::tick(tick.at, inward, n == lowerLeft ? TickLabel::Full : TickLabel::Figures);
        tick.mark.drawing = drawing::moved(std::move(tick.mark.drawing), tick.onFilm);
        const Box& box = tick.mark.box;
        tick.mark.box = {box.left + tick.onFilm.x, box.top + tick.onFilm.y, box.right + tick.onFilm.x,
                         box.bottom + tick.onFilm.y};
    }
    return ticks;
}

Result<std::vector<std::vector<Point>>> inkOf(const PageOrder& order) {
    const auto link = geodesy::PlaneLink::between(order.plan.planeCrs(), order.frame.gridCrs());
    if (!link) {
        return tl::unexpected(link.error());
    }
    std::vector<std::vector<Point>> lines;
    for (const GroundLine& ground : groundLines(order.plan, *link)) {
        std::vector<Point> line;
        for (const geodesy::PlanePoint point : ground) {
            line.push_back(order.frame.gridToFilm(point));
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

Box onFilm(const Box& page, Point windowAt) {
    return {page.left - windowAt.x, page.top - windowAt.y, page.right - windowAt.x, page.bottom - windowAt.y};
}

/// A square of the printed grid whose corners and name find room in the window, the nearest to the block.
std::optional<NamedSquare> squareFor(const plan::Registration& registration, const Frame& frame, const GridNames& names,
                                     const Occupancy& drawn, const std::vector<Box>& taken, Point block) {
    const Metres side = gridInterval(frame.scale());
    const PaperMm paperSide = onPaper(side, frame.scale());
    std::optional<NamedSquare> best;
    double least = std::numeric_limits<double>::infinity();
    for (const Metres northing : linesIn({registration.southWest.northing, registration.northEast.northing}, side)) {
        for (const Metres easting : linesIn({registration.southWest.easting, registration.northEast.easting}, side)) {
            const Point low = frame.gridToFilm({easting, northing});
            const Box square{low.x, low.y - paperSide.value(), low.x + paperSide.value(), low.y};
            if (!frame.window().grown(-1).contains(square)) {
                continue;
            }
            const std::string name = names.square({easting, northing}, side);
            const SquareMarks marks = squareMarks(square, name, paperSide);
            double cost = std::hypot(square.middle().x - block.x, square.middle().y - block.y);
            bool free = true;
            for (const Box& box : marks.boxes) {
                free = free && std::none_of(taken.begin(), taken.end(), [&](const Box& t) { return t.meets(box); });
                cost += 200.0 * drawn.within(box.grown(1));
            }
            if (free && cost < least) {
                least = cost;
                best = NamedSquare{{easting, northing}, side, name, paperSide};
            }
        }
    }
    return best;
}

/// Pieces of furniture that do not depend on where they stand.
struct Pieces {
    Piece level = levelBar();
    Piece upright = uprightBar();
    Piece north;
    Piece notch;
    Piece mark;
};

Pieces piecesOf(const PageOrder& order) {
    Pieces pieces;
    if (order.gm) {
        pieces.north = northMark(*order.gm, order.angles);
    }
    const auto& films = order.plan.films();
    const auto at =
        std::find_if(films.begin(), films.end(), [&](const plan::FilmPtr& film) { return film->id == order.film.id; });
    const auto number = static_cast<std::size_t>(at - films.begin()) + 1;
    pieces.notch = notches(number, std::max(number, films.size()));
    pieces.mark = marking(order.plan.heading().marking);
    return pieces;
}

Size sizeOf(const Piece& piece) {
    return {piece.width, piece.height};
}

struct Chosen {
    Paper paper;
    Places places;
};

/// The first size that holds everything free of what is drawn; where none does, the best of what there is.
std::optional<Chosen> choose(const PaperChoice& papers, const PiecesToPlace& pieces, const Occupancy& drawn) {
    std::optional<Chosen> best;
    const auto better = [](const Places& a, const Places& b) {
        return a.clashes != b.clashes ? a.clashes < b.clashes : a.inside < b.inside;
    };
    for (const auto& size : papers.sizes) {
        for (const Paper& paper : size) {
            const auto places = placeOn(paper, pieces, drawn);
            if (places && (!best || better(*places, best->places))) {
                best = Chosen{paper, *places};
            }
        }
        if (best && best->places.clashes == 0) {
            break;
        }
    }
    return best;
}

void addBar(Page& page, const Piece& bar, const Box& place) {
    const Point at{place.left, place.top};
    page.bars.push_back({bar.bar.from + at, bar.bar.to + at});
    page.furniture.append(drawing::moved(bar.drawing, at));
}

void addPiece(Page& page, const Piece& piece, const Box& place) {
    if (!place.isEmpty()) {
        page.furniture.append(drawing::moved(piece.drawing, {place.left, place.top}));
    }
}

tl::unexpected<Error> tooSmall(const PageOrder& order) {
    const Box window = order.frame.window();
    const Paper least = leastPaperFor({window.width(), window.height()});
    return fail(kPaperTooSmall, {{"film", order.film.name},
                                 {"paper", order.papers.name},
                                 {"width_mm", least.width.value()},
                                 {"height_mm", least.height.value()}});
}

}  // namespace

Result<Page> layOut(const PageOrder& order) {
    const auto registration = registrationFor(order.plan, order.film);
    if (!registration) {
        return tl::unexpected(registration.error());
    }
    const auto names = GridNames::of(order.frame.gridCrs());
    const auto ink = inkOf(order);
    if (!names || !ink) {
        return tl::unexpected(names ? ink.error() : names.error());
    }
    const Box window = order.frame.window();
    const Occupancy drawn(window, *ink);
    const std::vector<PlacedTick> ticks = ticksOf(*registration, order.frame);
    const Pieces pieces = piecesOf(order);
    const Block bare = administrativeBlock(order, *registration, *names, nullptr);

    PiecesToPlace toPlace{{window.width(), window.height()},
                          {bare.width, bare.height},
                          sizeOf(pieces.level),
                          sizeOf(pieces.upright),
                          sizeOf(pieces.north),
                          sizeOf(pieces.mark),
                          sizeOf(pieces.notch),
                          {}};
    for (const PlacedTick& tick : ticks) {
        toPlace.ticks.push_back(tick.mark.box);
    }
    const auto chosen = choose(order.papers, toPlace, drawn);
    if (!chosen) {
        return tooSmall(order);
    }

    Page page;
    page.paper = chosen->paper;
    const Places& places = chosen->places;
    page.windowAt = places.windowAt;
    page.block = places.block;
    page.reserved = toPlace.ticks;
    for (const Box& place : {places.block, places.levelBar, places.uprightBar, places.north}) {
        const Box inside = onFilm(place, page.windowAt);
        if (!place.isEmpty() && inside.meets(window)) {
            page.reserved.push_back(inside.grown(1));
        }
    }
    page.furniture = drawing::moved(windowFrame(window, *registration), page.windowAt);
    for (const PlacedTick& tick : ticks) {
        page.ticks.push_back({names->crossing(tick.at), tick.at, tick.onFilm + page.windowAt});
        page.furniture.append(drawing::moved(tick.mark.drawing, page.windowAt));
    }
    const auto square = squareFor(*registration, order.frame, *names, drawn, page.reserved,
                                  onFilm(places.block, page.windowAt).middle());
    if (square) {
        const Point low = order.frame.gridToFilm(square->southWest);
        const double side = square->onPaper.value();
        const SquareMarks marks =
            squareMarks({low.x, low.y - side, low.x + side, low.y}, square->name, square->onPaper);
        page.furniture.append(drawing::moved(marks.drawing, page.windowAt));
        page.reserved.insert(page.reserved.end(), marks.boxes.begin(), marks.boxes.end());
    }
    addBar(page, pieces.level, places.levelBar);
    addBar(page, pieces.upright, places.uprightBar);
    addPiece(page, pieces.north, places.north);
    addPiece(page, pieces.notch, places.notches);
    addPiece(page, pieces.mark, places.topMarking);
    addPiece(page, pieces.mark, places.footMarking);
    const Block block = administrativeBlock(order, *registration, *names, square ? &*square : nullptr);
    page.furniture.append(drawing::moved(block.drawing, {places.block.left, places.block.top}));
    return page;
}

}  // namespace crosstick::film
