#include "core/film/page.h"

#include <algorithm>

#include "core/film/block.h"
#include "core/film/faults.h"
#include "core/film/furniture.h"
#include "core/film/ground_lines.h"
#include "core/film/named_square.h"
#include "core/film/placed_ticks.h"
#include "core/film/placement.h"
#include "core/film/registration.h"

namespace crosstick::film {
namespace {

using drawing::Box;
using drawing::Point;

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

PiecesToPlace piecesToPlace(const Box& window, const Block& block, const Pieces& pieces,
                            const std::vector<PlacedTick>& ticks) {
    PiecesToPlace toPlace{{window.width(), window.height()},
                          {block.width, block.height},
                          sizeOf(pieces.level),
                          sizeOf(pieces.upright),
                          sizeOf(pieces.north),
                          sizeOf(pieces.mark),
                          sizeOf(pieces.notch),
                          {}};
    for (const PlacedTick& tick : ticks) {
        toPlace.ticks.push_back(tick.mark.box);
    }
    return toPlace;
}

/// What of the furniture stands inside the window, in film millimetres.
void reserveInside(Page& page, const Places& places, const Box& window) {
    for (const Box& place : {places.block, places.levelBar, places.uprightBar, places.north}) {
        const Box inside = onFilm(place, page.windowAt);
        if (!place.isEmpty() && inside.meets(window)) {
            page.reserved.push_back(inside.grown(1));
        }
    }
}

void addSquare(Page& page, const NamedSquare& square, const Frame& frame) {
    const Point low = frame.gridToFilm(square.southWest);
    const double side = square.onPaper.value();
    const SquareMarks marks = squareMarks({low.x, low.y - side, low.x + side, low.y}, square.name, square.onPaper);
    page.furniture.append(drawing::moved(marks.drawing, page.windowAt));
    page.reserved.insert(page.reserved.end(), marks.boxes.begin(), marks.boxes.end());
}

void addFurniture(Page& page, const Pieces& pieces, const Places& places) {
    addBar(page, pieces.level, places.levelBar);
    addBar(page, pieces.upright, places.uprightBar);
    addPiece(page, pieces.north, places.north);
    addPiece(page, pieces.notch, places.notches);
    addPiece(page, pieces.mark, places.topMarking);
    addPiece(page, pieces.mark, places.footMarking);
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
    const std::vector<PlacedTick> ticks = placedTicks(*registration, order.frame, drawn);
    const Pieces pieces = piecesOf(order);
    // The block's size does not depend on which square it names; where it stands decides which one is near.
    const Block unnamed = administrativeBlock(order, *registration, *names, nullptr);
    const PiecesToPlace toPlace = piecesToPlace(window, unnamed, pieces, ticks);
    const auto chosen = choose(order.papers, toPlace, drawn);
    if (!chosen) {
        return tooSmall(order);
    }
    const Places& places = chosen->places;
    Page page{chosen->paper, places.windowAt, {}, {}, places.block, toPlace.ticks, {}};
    reserveInside(page, places, window);
    page.furniture = drawing::moved(windowFrame(window, *registration), page.windowAt);
    for (const PlacedTick& tick : ticks) {
        page.ticks.push_back({names->crossing(tick.at), tick.at, tick.onFilm + page.windowAt});
        page.furniture.append(drawing::moved(tick.mark.drawing, page.windowAt));
    }
    const auto square = namedSquare(*registration, order.frame, *names, drawn, page.reserved,
                                    onFilm(places.block, page.windowAt).middle());
    if (square) {
        addSquare(page, *square, order.frame);
    }
    addFurniture(page, pieces, places);
    const Block block = administrativeBlock(order, *registration, *names, square ? &*square : nullptr);
    page.furniture.append(drawing::moved(block.drawing, {places.block.left, places.block.top}));
    return page;
}

}  // namespace crosstick::film
