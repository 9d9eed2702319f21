#include "core/film/page_pieces.h"

#include <algorithm>

#include "core/film/faults.h"

namespace crosstick::film {
namespace {

using drawing::Box;
using drawing::Point;

Box onFilm(const Box& page, Point windowAt) {
    return {page.left - windowAt.x, page.top - windowAt.y, page.right - windowAt.x, page.bottom - windowAt.y};
}

Size sizeOf(const Piece& piece) {
    return {piece.width, piece.height};
}

Piece widestNotches(std::size_t count, const Speech& say) {
    Piece widest;
    for (std::size_t number = 1; number <= count; ++number) {
        Piece piece = notches(number, count, say);
        if (piece.width > widest.width) {
            widest = std::move(piece);
        }
    }
    return widest;
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

/// What of the furniture stands inside the window, in film millimetres.
std::vector<Box> reservedBy(const Places& places, const std::vector<Box>& ticks, const Box& window) {
    std::vector<Box> reserved = ticks;
    for (const Box& place : {places.block, places.levelBar, places.uprightBar, places.north}) {
        const Box inside = onFilm(place, places.windowAt);
        if (!place.isEmpty() && inside.meets(window)) {
            reserved.push_back(inside.grown(1));
        }
    }
    return reserved;
}

SquareMarks marksOf(const NamedSquare& square, const Frame& frame) {
    const Point low = frame.gridToFilm(square.southWest);
    return squareMarks(
        {low.x, low.y - frame.north(square.side).value(), low.x + frame.east(square.side).value(), low.y}, square.name,
        square.onPaper);
}

void addFurniture(Page& page, const Pieces& pieces, const Places& places) {
    addBar(page, pieces.level, places.levelBar);
    addBar(page, pieces.upright, places.uprightBar);
    addPiece(page, pieces.north, places.north);
    // The room is that of the widest: a film's own notches end where the paper's edge is.
    const Box& room = places.notches;
    addPiece(page, pieces.notch, {room.right - pieces.notch.width, room.top, room.right, room.bottom});
    addPiece(page, pieces.mark, places.topMarking);
    addPiece(page, pieces.mark, places.footMarking);
}

}  // namespace

Pieces piecesOf(const PageOrder& order, const Ground& ground) {
    Pieces pieces{levelBar(order.say), uprightBar(order.say), {}, {}, marking(order.plan.heading().marking), {}};
    if (order.gm) {
        pieces.north = northMark(*order.gm, order.angles, order.say);
    }
    const auto& films = order.plan.films();
    const auto at =
        std::find_if(films.begin(), films.end(), [&](const plan::FilmPtr& film) { return film->id == order.film.id; });
    const auto number = static_cast<std::size_t>(at - films.begin()) + 1;
    const std::size_t count = std::max(number, films.size());
    pieces.notch = notches(number, count, order.say);
    // The block's size does not depend on which square it names; where it stands decides which one is near.
    const Block unnamed = administrativeBlock(order, ground.registration, ground.names, nullptr);
    const Box window = order.frame.window();
    pieces.toPlace = {{window.width(), window.height()},
                      {unnamed.width, unnamed.height},
                      sizeOf(pieces.level),
                      sizeOf(pieces.upright),
                      sizeOf(pieces.north),
                      sizeOf(pieces.mark),
                      sizeOf(widestNotches(count, order.say)),
                      {}};
    for (const PlacedTick& tick : ground.ticks) {
        pieces.toPlace.ticks.push_back(tick.mark.box);
    }
    return pieces;
}

Result<Arrangement> arrange(const PageOrder& order, const Ground& ground, const Pieces& pieces) {
    const auto chosen = choose(order.papers, pieces.toPlace, ground.drawn);
    if (!chosen) {
        return tooSmall(order);
    }
    const Places& places = chosen->places;
    Arrangement arranged{pieces.toPlace, order.papers, chosen->paper, places, {}, {}};
    arranged.reserved = reservedBy(places, pieces.toPlace.ticks, order.frame.window());
    arranged.square = namedSquare(ground.registration, order.frame, ground.names, ground.drawn, arranged.reserved,
                                  onFilm(places.block, places.windowAt).middle());
    if (arranged.square) {
        const SquareMarks marks = marksOf(*arranged.square, order.frame);
        arranged.reserved.insert(arranged.reserved.end(), marks.boxes.begin(), marks.boxes.end());
    }
    return arranged;
}

Page drawnPage(const PageOrder& order, const Ground& ground, const Pieces& pieces, const Arrangement& arrangement) {
    const Places& places = arrangement.places;
    Page page{arrangement.paper, places.windowAt, {}, {}, places.block, arrangement.reserved, {}};
    page.furniture = drawing::moved(windowFrame(order.frame.window(), ground.registration), page.windowAt);
    for (const PlacedTick& tick : ground.ticks) {
        page.ticks.push_back({ground.names.crossing(tick.at), tick.at, tick.onFilm + page.windowAt});
        page.furniture.append(drawing::moved(tick.mark.drawing, page.windowAt));
    }
    if (arrangement.square) {
        page.furniture.append(drawing::moved(marksOf(*arrangement.square, order.frame).drawing, page.windowAt));
    }
    addFurniture(page, pieces, places);
    const Block block = administrativeBlock(order, ground.registration, ground.names,
                                            arrangement.square ? &*arrangement.square : nullptr);
    page.furniture.append(drawing::moved(block.drawing, {places.block.left, places.block.top}));
    return page;
}

}  // namespace crosstick::film
