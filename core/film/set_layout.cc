#include "core/film/set_layout.h"

#include <algorithm>
#include <utility>

#include "core/film/march_block.h"
#include "core/film/page_pieces.h"
#include "core/film/registration.h"

namespace crosstick::film {

/// A grid that films lie on, opened once.
struct SetLayout::Grid {
    std::shared_ptr<const geodesy::PlaneLink> link;
    std::optional<GridNames> names = std::nullopt;
    std::optional<std::vector<GroundLine>> lines = std::nullopt;
};

/// How films of one grid, scale, window and set of ticks lie: what is drawn there, and the arrangements found so far.
struct SetLayout::Lie {
    std::string crs;
    Scale scale;
    plan::Registration registration;
    drawing::Box window;
    const GridNames& names;
    Occupancy drawn;
    std::vector<PlacedTick> ticks;
    std::vector<Arrangement> arrangements = {};
};

namespace {

std::vector<std::vector<drawing::Point>> onFilm(const std::vector<GroundLine>& lines, const Frame& frame) {
    std::vector<std::vector<drawing::Point>> ink;
    ink.reserve(lines.size());
    for (const GroundLine& ground : lines) {
        std::vector<drawing::Point> line;
        line.reserve(ground.size());
        for (const geodesy::PlanePoint point : ground) {
            line.push_back(frame.gridToFilm(point));
        }
        ink.push_back(std::move(line));
    }
    return ink;
}

}  // namespace

SetLayout::SetLayout(const plan::Plan& plan) : plan_(plan) {}
SetLayout::~SetLayout() = default;
SetLayout::SetLayout(SetLayout&&) noexcept = default;
SetLayout& SetLayout::operator=(SetLayout&&) noexcept = default;

Result<SetLayout::Grid*> SetLayout::grid(const std::string& crs) {
    if (const auto known = grids_.find(crs); known != grids_.end()) {
        return known->second.get();
    }
    auto link = geodesy::PlaneLink::between(plan_.planeCrs(), crs);
    if (!link) {
        return tl::unexpected(link.error());
    }
    auto opened = std::make_unique<Grid>(Grid{std::make_shared<const geodesy::PlaneLink>(std::move(*link))});
    return grids_.emplace(crs, std::move(opened)).first->second.get();
}

Result<Frame> SetLayout::frame(const plan::Film& film, std::optional<Scale> scale) {
    const plan::SheetPtr sheet = plan_.groundSheet(film);
    return grid(plan_.gridCrs(film))
        .and_then([&](Grid* grid) { return Frame::over(plan_, film, grid->link, scale); })
        .map([&](Frame frame) {  // a film to another scale fits no paper sheet anyhow
            return sheet && sheet->stretch && frame.scale() == sheet->scale ? frame.fitted(*sheet->stretch) : frame;
        });
}

Result<SetLayout::Lie*> SetLayout::lie(const PageOrder& order) {
    auto registration = registrationFor(plan_, order.film);
    if (!registration) {
        return tl::unexpected(registration.error());
    }
    const auto alike = std::find_if(lies_.begin(), lies_.end(), [&](const auto& known) {
        return known->crs == order.frame.gridCrs() && known->scale == order.frame.scale() &&
               known->window == order.frame.window() && known->registration == *registration;
    });
    if (alike != lies_.end()) {
        return alike->get();
    }
    const auto ground = grid(order.frame.gridCrs());
    if (!ground) {
        return tl::unexpected(ground.error());
    }
    Grid& opened = **ground;
    if (!opened.names) {
        auto names = GridNames::of(order.frame.gridCrs());
        if (!names) {
            return tl::unexpected(names.error());
        }
        opened.names.emplace(std::move(*names));
        opened.lines = groundLines(plan_, *opened.link);
    }
    auto ink = onFilm(*opened.lines, order.frame);
    const auto onPaper = inkOnPaper(plan_, plan_.gauge(order.film));
    ink.insert(ink.end(), onPaper.begin(), onPaper.end());
    Occupancy drawn(order.frame.window(), ink);
    auto ticks = placedTicks(*registration, order.frame, drawn);
    lies_.push_back(
        std::make_unique<Lie>(Lie{order.frame.gridCrs(), order.frame.scale(), std::move(*registration),
                                  order.frame.window(), *opened.names, std::move(drawn), std::move(ticks)}));
    return lies_.back().get();
}

Result<Page> SetLayout::layOut(const PageOrder& order) {
    const auto found = lie(order);
    if (!found) {
        return tl::unexpected(found.error());
    }
    Lie& lie = **found;
    const Ground ground{lie.registration, lie.names, lie.drawn, lie.ticks};
    const Pieces pieces = piecesOf(order, ground);
    const auto alike = std::find_if(lie.arrangements.begin(), lie.arrangements.end(), [&](const Arrangement& known) {
        return known.pieces == pieces.toPlace && known.papers == order.papers;
    });
    if (alike != lie.arrangements.end()) {
        return drawnPage(order, ground, pieces, *alike);
    }
    auto arranged = arrange(order, ground, pieces);
    if (!arranged) {
        return tl::unexpected(arranged.error());
    }
    lie.arrangements.push_back(std::move(*arranged));
    return drawnPage(order, ground, pieces, lie.arrangements.back());
}

Result<Page> layOut(const PageOrder& order) {
    return SetLayout(order.plan).layOut(order);
}

}  // namespace crosstick::film
