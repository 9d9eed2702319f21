#include "core/sheets/see_through.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace crosstick::sheets {
namespace {

using Blank = SeeThrough::Blank;

// Our own, by films photographed in bad light.
constexpr int kCoarse = 256;     // pixels of the longer side
constexpr int kThin = 1;         // of them: half the width of lines that may run out of the picture
constexpr int kStroke = 3;       // and of strokes, whatever their colour
constexpr int kFilled = 8;       // and of what is filled with a colour
constexpr float kNoise = 0.16F;  // of its surroundings' brightness, that blank film may be darker: grain, folds
constexpr float kFull = 0.50F;   // so much darker is wholly ink

float channel(std::uint32_t rgb, unsigned shift) {
    return static_cast<float>(rgb >> shift & 0xFFU);
}

std::uint32_t byte(float value) {
    return static_cast<std::uint32_t>(std::lround(std::clamp(value, 0.0F, 255.0F)));
}

/// The coarse picture.
struct Coarse {
    int columns = 0, rows = 0;
    std::vector<Blank> cells;
    [[nodiscard]] std::size_t indexOf(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(column);
    }
    [[nodiscard]] const Blank& at(int column, int row) const { return cells[indexOf(column, row)]; }
};

/// Of each cell, what is picked from all within a circle about it, colour by colour.
template <typename Pick>
Coarse within(const Coarse& from, int reach, Pick pick) {
    Coarse to{from.columns, from.rows, {}};
    to.cells.reserve(from.cells.size());
    for (int row = 0; row < from.rows; ++row) {
        for (int column = 0; column < from.columns; ++column) {
            Blank picked = from.at(column, row);
            for (int y = std::max(0, row - reach); y <= std::min(from.rows - 1, row + reach); ++y) {
                const int wide = static_cast<int>(std::sqrt(reach * reach - (y - row) * (y - row)));
                for (int x = std::max(0, column - wide); x <= std::min(from.columns - 1, column + wide); ++x) {
                    const Blank& cell = from.at(x, y);
                    picked = {pick(picked.red, cell.red), pick(picked.green, cell.green), pick(picked.blue, cell.blue),
                              pick(picked.film, cell.film)};
                }
            }
            to.cells.push_back(picked);
        }
    }
    return to;
}

/// Fills what is dark and narrower than a circle; what is wider keeps its outline.
Coarse filled(const Coarse& picture, int reach) {
    const auto brighter = [](float a, float b) { return std::max(a, b); };
    const auto darker = [](float a, float b) { return std::min(a, b); };
    return within(within(picture, reach, brighter), reach, darker);
}

float rising(float value, float none, float all) {
    return std::clamp((value - none) / (all - none), 0.0F, 1.0F);
}

/// What is left of the light in three colours.
struct Left {
    float least = 1, most = 1;
    [[nodiscard]] float evenness() const { return least / std::max(most, 0.01F); }
};
Left leftOf(const Blank& here, const Blank& about) {
    const std::array<float, 3> left{here.red / std::max(about.red, 1.0F), here.green / std::max(about.green, 1.0F),
                                    here.blue / std::max(about.blue, 1.0F)};
    const auto [least, most] = std::minmax_element(left.begin(), left.end());
    return {*least, *most};
}

/// 1 where a wide dark place is a shadow, 0 where it is ink: a shadow takes all colours alike, and not all light.
float shadowOf(const Blank& here, const Blank& about) {
    const Left left = leftOf(here, about);
    return rising(left.evenness(), 0.66F, 0.78F) * rising(left.least, 0.22F, 0.32F);
}

/// The colour of most film in full light: that in the middle of the brighter third.
Blank filmOf(std::vector<Blank> cells) {
    const auto middle = cells.begin() + static_cast<std::ptrdiff_t>(cells.size() / 6);
    std::nth_element(cells.begin(), middle, cells.end(),
                     [](const Blank& a, const Blank& b) { return a.green > b.green; });
    return *middle;
}

/// Marks the table: what has not the film's colour, or next to no light, and reaches to the picture's edge; and the rim
/// of the film beside it, which no cell tells from it.
void leaveOutTable(Coarse& picture) {
    constexpr int kRim = 2;
    const Blank film = filmOf(picture.cells);
    const auto isTable = [&](const Blank& cell) {
        const Left left = leftOf(cell, film);
        return left.evenness() < 0.6F || left.least < 0.2F;
    };
    std::vector<std::pair<int, int>> next;
    const auto visit = [&](int column, int row) {
        if (column < 0 || row < 0 || column >= picture.columns || row >= picture.rows) {
            return;
        }
        Blank& cell = picture.cells[picture.indexOf(column, row)];
        if (cell.film > 0 && isTable(cell)) {
            cell.film = 0;
            next.emplace_back(column, row);
        }
    };
    for (int column = 0; column < picture.columns; ++column) {
        visit(column, 0);
        visit(column, picture.rows - 1);
    }
    for (int row = 0; row < picture.rows; ++row) {
        visit(0, row);
        visit(picture.columns - 1, row);
    }
    while (!next.empty()) {
        const auto [column, row] = next.back();
        next.pop_back();
        visit(column - 1, row);
        visit(column + 1, row);
        visit(column, row - 1);
        visit(column, row + 1);
    }
    const Coarse wider = within(picture, kRim, [](float a, float b) { return std::min(a, b); });
    for (std::size_t n = 0; n < picture.cells.size(); ++n) {
        picture.cells[n].film = wider.cells[n].film;
    }
}

}  // namespace

Result<SeeThrough> SeeThrough::of(const Raster& copy) {
    const int longer = std::max(copy.columns(), copy.rows());
    const auto coarse = [&](int side) { return std::max(2, static_cast<int>(std::int64_t{side} * kCoarse / longer)); };
    SeeThrough made;
    made.columns_ = coarse(copy.columns());
    made.rows_ = coarse(copy.rows());
    made.perColumn_ = static_cast<double>(made.columns_) / copy.columns();
    made.perRow_ = static_cast<double>(made.rows_) / copy.rows();
    const auto pixels = copy.read({0, 0, copy.columns(), copy.rows()}, made.columns_, made.rows_);
    if (!pixels) {
        return tl::unexpected(pixels.error());
    }
    Coarse picture{made.columns_, made.rows_, {}};
    for (const std::uint32_t rgb : pixels->rgb) {
        picture.cells.push_back({channel(rgb, 16), channel(rgb, 8), channel(rgb, 0)});
    }
    const Coarse strokes = filled(picture, kStroke);
    Coarse table = filled(picture, kThin);
    leaveOutTable(table);
    const Coarse about = filled(strokes, kFilled);
    for (std::size_t n = 0; n < picture.cells.size(); ++n) {
        const Blank& a = about.cells[n];
        const Blank& b = strokes.cells[n];
        const float share = shadowOf(b, a);
        made.blank_.push_back({a.red + share * (b.red - a.red), a.green + share * (b.green - a.green),
                               a.blue + share * (b.blue - a.blue), table.cells[n].film});
    }
    return made;
}

SeeThrough::Blank SeeThrough::blankAt(plan::RasterSpot spot) const {
    const double x = std::clamp(spot.column * perColumn_ - 0.5, 0.0, columns_ - 1.0);
    const double y = std::clamp(spot.row * perRow_ - 0.5, 0.0, rows_ - 1.0);
    const auto left = static_cast<std::size_t>(x);
    const auto top = static_cast<std::size_t>(y);
    const auto across = static_cast<float>(x - static_cast<double>(left));
    const auto down = static_cast<float>(y - static_cast<double>(top));
    const auto wide = static_cast<std::size_t>(columns_);
    const std::size_t right = std::min(left + 1, wide - 1);
    const std::size_t below = std::min(top + 1, static_cast<std::size_t>(rows_) - 1);
    const std::array<const Blank*, 4> corners{&blank_[top * wide + left], &blank_[top * wide + right],
                                              &blank_[below * wide + left], &blank_[below * wide + right]};
    const std::array<float, 4> shares{(1 - across) * (1 - down), across * (1 - down), (1 - across) * down,
                                      across * down};
    Blank blank{0, 0, 0, 0};
    for (std::size_t n = 0; n < corners.size(); ++n) {
        blank.red += shares[n] * corners[n]->red;
        blank.green += shares[n] * corners[n]->green;
        blank.blue += shares[n] * corners[n]->blue;
        blank.film += shares[n] * corners[n]->film;
    }
    return blank;
}

std::uint32_t SeeThrough::pixel(std::uint32_t rgb, plan::RasterSpot spot) const {
    const Blank blank = blankAt(spot);
    const std::array<float, 3> shares{channel(rgb, 16) / std::max(blank.red, 1.0F),
                                      channel(rgb, 8) / std::max(blank.green, 1.0F),
                                      channel(rgb, 0) / std::max(blank.blue, 1.0F)};
    const float darkest = 1 - std::min({shares[0], shares[1], shares[2], 1.0F});
    const float ink = std::clamp((darkest - kNoise) / (kFull - kNoise), 0.0F, 1.0F);
    if (ink <= 0) {
        return 0;
    }
    // What is seen is ink over white light: the ink's own colour is what is left without the light.
    const auto colour = [ink](float share) { return byte(255 * (std::min(share, 1.0F) - (1 - ink)) / ink); };
    return byte(255 * ink * blank.film) << 24 | colour(shares[0]) << 16 | colour(shares[1]) << 8 | colour(shares[2]);
}

}  // namespace crosstick::sheets
