#include "core/registration/resampling.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace crosstick::registration {
namespace {

constexpr int kStep = 16;
constexpr double kNowhere = -1e9;
constexpr std::uint32_t kWhite = 0xffffffffU;

/// Where the window's pixels lie in the picture, at every kStep-th.
struct Nodes {
    int across = 0, down = 0;
    std::vector<PixelPoint> places;
    [[nodiscard]] const PixelPoint& at(int column, int row) const {
        return places[static_cast<std::size_t>(row) * static_cast<std::size_t>(across) +
                      static_cast<std::size_t>(column)];
    }
};

Nodes nodesOf(const Model& model, const plan::Placement& p, sheets::PixelWindow window) {
    Nodes nodes{(window.columns - 1) / kStep + 2, (window.rows - 1) / kStep + 2, {}};
    for (int n = 0; n < nodes.down; ++n) {
        for (int k = 0; k < nodes.across; ++k) {
            const double x = window.column + k * kStep + 0.5;
            const double y = window.row + n * kStep + 0.5;
            const geodesy::PlanePoint place{p.corner.easting + Metres(x * p.eastPerColumn + y * p.eastPerRow),
                                            p.corner.northing + Metres(x * p.northPerColumn + y * p.northPerRow)};
            nodes.places.push_back(model.pixel(place).value_or(PixelPoint{kNowhere, kNowhere}));
        }
    }
    return nodes;
}

/// What of the picture the window needs: nothing where that lies outside.
sheets::PixelWindow needed(const Nodes& nodes, const sheets::Raster& raster) {
    double left = raster.columns();
    double top = raster.rows();
    double right = 0;
    double bottom = 0;
    for (const PixelPoint& p : nodes.places) {
        if (p.x == kNowhere) {
            continue;
        }
        left = std::min(left, std::max(0.0, p.x - 2));
        top = std::min(top, std::max(0.0, p.y - 2));
        right = std::max(right, std::min<double>(raster.columns(), p.x + 2));
        bottom = std::max(bottom, std::min<double>(raster.rows(), p.y + 2));
    }
    const int column = static_cast<int>(left);
    const int row = static_cast<int>(top);
    return {column, row, static_cast<int>(std::ceil(right)) - column, static_cast<int>(std::ceil(bottom)) - row};
}

/// The four pixels round a place, by its nearness to each.
std::uint32_t bilinear(const sheets::Pixels& picture, double x, double y) {
    const int column = std::clamp(static_cast<int>(std::floor(x)), 0, std::max(0, picture.columns - 2));
    const int row = std::clamp(static_cast<int>(std::floor(y)), 0, std::max(0, picture.rows - 2));
    const auto right = static_cast<std::uint32_t>(std::clamp((x - column) * 256, 0.0, 256.0));
    const auto below = static_cast<std::uint32_t>(std::clamp((y - row) * 256, 0.0, 256.0));
    const auto pixel = [&](int dx, int dy) {
        const int c = std::min(column + dx, picture.columns - 1);
        const int r = std::min(row + dy, picture.rows - 1);
        return picture
            .rgb[static_cast<std::size_t>(r) * static_cast<std::size_t>(picture.columns) + static_cast<std::size_t>(c)];
    };
    const std::uint32_t a = pixel(0, 0);
    const std::uint32_t b = pixel(1, 0);
    const std::uint32_t c = pixel(0, 1);
    const std::uint32_t d = pixel(1, 1);
    std::uint32_t mixed = 0xff000000U;
    for (const std::uint32_t shift : {0U, 8U, 16U}) {
        const auto part = [&](std::uint32_t rgb) { return (rgb >> shift) & 0xffU; };
        const std::uint32_t upper = part(a) * (256 - right) + part(b) * right;
        const std::uint32_t lower = part(c) * (256 - right) + part(d) * right;
        mixed |= ((upper * (256 - below) + lower * below + 0x8000U) >> 16U) << shift;
    }
    return mixed;
}

PixelPoint between(const Nodes& nodes, int column, int row) {
    const int k = column / kStep;
    const int n = row / kStep;
    const double u = static_cast<double>(column % kStep) / kStep;
    const double v = static_cast<double>(row % kStep) / kStep;
    const auto mix = [&](double PixelPoint::*part) {
        return (nodes.at(k, n).*part * (1 - u) + nodes.at(k + 1, n).*part * u) * (1 - v) +
               (nodes.at(k, n + 1).*part * (1 - u) + nodes.at(k + 1, n + 1).*part * u) * v;
    };
    return {mix(&PixelPoint::x), mix(&PixelPoint::y)};
}

}  // namespace

Result<sheets::Pixels> resampled(const sheets::Raster& raster, const Model& model, const plan::Placement& placement,
                                 sheets::PixelWindow window) {
    const auto count = static_cast<std::size_t>(window.columns) * static_cast<std::size_t>(window.rows);
    sheets::Pixels straight{window.columns, window.rows, std::vector<std::uint32_t>(count, kWhite)};
    const Nodes nodes = nodesOf(model, placement, window);
    const sheets::PixelWindow source = needed(nodes, raster);
    if (source.columns < 1 || source.rows < 1) {
        return straight;
    }
    const auto picture = raster.read(source, source.columns, source.rows);
    if (!picture) {
        return tl::unexpected(picture.error());
    }
    auto into = straight.rgb.begin();
    for (int row = 0; row < window.rows; ++row) {
        for (int column = 0; column < window.columns; ++column, ++into) {
            const PixelPoint at = between(nodes, column, row);
            if (at.x >= 0 && at.y >= 0 && at.x < raster.columns() && at.y < raster.rows()) {
                *into = bilinear(*picture, at.x - 0.5 - source.column, at.y - 0.5 - source.row);
            }
        }
    }
    return straight;
}

}  // namespace crosstick::registration
