#include "tests/sheets/photographed_film.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <stdexcept>
#include <vector>

#include <cpl_string.h>
#include <gdal_priv.h>

namespace crosstick::testing {
namespace {

constexpr double kWide = 297, kHigh = 210;  // mm
constexpr double kPixelsPerMm = 4.7;
constexpr double kTurn = 0.06;
constexpr double kSlant = 0.0011;  // by which depth grows with each mm

using Colour = std::array<double, 3>;

struct Spot {
    double x = 0, y = 0;  ///< mm from the film's upper left corner
};

/// The camera looks from below: what is farther up is smaller.
Spot spotAt(double column, double row) {
    const double u = (column - kPhotoColumns / 2.0) / kPixelsPerMm;
    const double v = (row - kPhotoRows / 2.0) / kPixelsPerMm;
    const double depth = 1 / (1 + kSlant * v);
    const double x = u * depth;
    const double y = v * depth;
    return {kWide / 2 + x * std::cos(kTurn) + y * std::sin(kTurn),
            kHigh / 2 + 4 - x * std::sin(kTurn) + y * std::cos(kTurn)};
}

/// The other way.
plan::RasterSpot photoOf(Spot p) {
    const double right = p.x - kWide / 2;
    const double down = p.y - kHigh / 2 - 4;
    const double x = right * std::cos(kTurn) - down * std::sin(kTurn);
    const double y = right * std::sin(kTurn) + down * std::cos(kTurn);
    const double v = y / (1 - kSlant * y);
    const double u = x * (1 + kSlant * v);
    return {kPhotoColumns / 2.0 + u * kPixelsPerMm, kPhotoRows / 2.0 + v * kPixelsPerMm};
}

constexpr std::array<Spot, 4> kTicks{{{20, 20}, {277, 20}, {20, 190}, {277, 190}}};

double distance(Spot p, Spot a, Spot b) {
    const double dx = b.x - a.x;
    const double dy = b.y - a.y;
    const double t = std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy), 0.0, 1.0);
    return std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

struct Stroke {
    Pen pen;
    double width;  ///< mm
    std::vector<Spot> points;
};

std::vector<Stroke> letters(Spot at, Pen pen) {
    std::vector<Stroke> list;
    for (int n = 0; n < 5; ++n) {
        const double x = at.x + 6 * n;
        list.push_back({pen, 0.8, {{x, at.y}, {x, at.y - 5}, {x + 3.5, at.y - 2.5}, {x + 3.5, at.y}}});
    }
    return list;
}

std::vector<Stroke> drawing() {
    std::vector<Stroke> list;
    for (const Spot tick : kTicks) {
        list.push_back({Pen::Black, 0.6, {{tick.x - 5, tick.y}, {tick.x + 5, tick.y}}});
        list.push_back({Pen::Black, 0.6, {{tick.x, tick.y - 5}, {tick.x, tick.y + 5}}});
    }
    Stroke front{Pen::Red, 1.2, {}};
    Stroke axis{Pen::Blue, 1.2, {}};
    Stroke wire{Pen::Green, 1.0, {}};
    for (int n = 0; n <= 60; ++n) {
        front.points.push_back({40 + 3.6 * n, 60 + 18 * std::sin(n * 0.14)});
        axis.points.push_back({60 + 3.0 * n, 165 - 1.1 * n + 6 * std::sin(n * 0.3)});
        wire.points.push_back({35 + 3.8 * n, 120 + (n % 2 == 0 ? 3.0 : -3.0)});
    }
    list.insert(list.end(), {front, axis, wire});
    list.push_back({Pen::Blue, 1.0, {{130, 90}, {155, 90}, {155, 105}, {130, 105}, {130, 90}, {155, 105}}});
    list.push_back({Pen::Red, 12, {{215, 150}, {215.1, 150}}});  // filled
    for (const auto& [at, pen] : {std::pair{Spot{70, 40}, Pen::Black},
                                  {Spot{170, 85}, Pen::Red},
                                  {Spot{90, 185}, Pen::Black},
                                  {Spot{215, 62}, Pen::Blue},
                                  {Spot{180, 150}, Pen::Green}}) {
        const auto word = letters(at, pen);
        list.insert(list.end(), word.begin(), word.end());
    }
    return list;
}

struct Segment {
    Spot from, to;
    double halfWide = 0;  ///< mm
    Pen pen = Pen::Black;
    [[nodiscard]] bool isNear(Spot p) const {
        constexpr double kNear = 3;
        const double reach = halfWide + kNear;
        return p.x > std::min(from.x, to.x) - reach && p.x < std::max(from.x, to.x) + reach &&
               p.y > std::min(from.y, to.y) - reach && p.y < std::max(from.y, to.y) + reach;
    }
};

std::vector<Segment> segments() {
    std::vector<Segment> list;
    for (const Stroke& stroke : drawing()) {
        for (std::size_t n = 1; n < stroke.points.size(); ++n) {
            list.push_back({stroke.points[n - 1], stroke.points[n], stroke.width / 2, stroke.pen});
        }
    }
    return list;
}

/// How far outside of the nearest stroke a place lies, in mm, as far as it is near one; below 0 inside.
std::pair<double, Pen> nearestStroke(Spot p) {
    static const std::vector<Segment> all = segments();
    std::pair<double, Pen> best{1e9, Pen::Black};
    for (const Segment& segment : all) {
        if (segment.isNear(p)) {
            const double off = distance(p, segment.from, segment.to) - segment.halfWide;
            best = off < best.first ? std::pair{off, segment.pen} : best;
        }
    }
    return best;
}

constexpr Spot kCup{232, 78};
constexpr double kCupRadius = 33;  // mm

double fromCup(Spot p) {
    return std::hypot(p.x - kCup.x, p.y - kCup.y) - kCupRadius;
}

Colour times(Colour a, Colour b) {
    return {a[0] * b[0], a[1] * b[1], a[2] * b[2]};
}

Colour between(Colour a, Colour b, double share) {
    return {a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]), a[2] + share * (b[2] - a[2])};
}

/// How much of the lamp a hand with three fingers takes, 0 to 1, with soft edges.
double shadow(Spot p) {
    double off = distance(p, {95, 240}, {110, 170}) - 34;
    for (const Spot tip : {Spot{92, 108}, Spot{112, 98}, Spot{133, 106}}) {
        off = std::min(off, distance(p, {tip.x * 0.4 + 66, 160}, tip) - 8);
    }
    return std::clamp(0.5 - off / 3.5, 0.0, 1.0);
}

Colour light(Spot p) {
    const double far = std::hypot(p.x, p.y) / std::hypot(kWide, kHigh);
    const Colour lamp = between({1.03, 1.0, 0.93}, {0.66, 0.66, 0.68}, far);
    return between(lamp, times(lamp, {0.48, 0.52, 0.58}), shadow(p));
}

/// Where the film was folded a ridge shines and what is beside it is darker; the panels lean their own way.
double folds(Spot p) {
    double bright = 1 + (p.x < 100 ? 0.03 : -0.02) + (p.y < 104 ? -0.02 : 0.02);
    for (const double off : {p.x - 100 - 0.4 * std::sin(p.y / 9), p.y - 104 - 0.3 * std::sin(p.x / 7)}) {
        bright += 0.05 * std::exp(-std::pow(off / 0.5, 2)) - 0.09 * std::exp(-std::pow((off - 1.2) / 1.1, 2));
    }
    return bright;
}

Colour stain(Spot p) {
    const double off = fromCup(p);
    const double disc = std::clamp(0.5 - off / 2, 0.0, 1.0);
    const double rim = std::exp(-std::pow((off + 1) / (off > -1 ? 0.7 : 1.6), 2));
    return times(between({1, 1, 1}, {0.96, 0.92, 0.85}, disc), between({1, 1, 1}, {0.86, 0.76, 0.62}, rim));
}

Colour inkOf(Pen pen) {
    switch (pen) {
        case Pen::Black:
            return {0.12, 0.12, 0.14};
        case Pen::Red:
            return {0.82, 0.13, 0.16};
        case Pen::Blue:
            return {0.13, 0.27, 0.74};
        case Pen::Green:
            return {0.12, 0.52, 0.26};
    }
    return {1, 1, 1};
}

Colour table(Spot p) {
    const double grain = 1 + 0.12 * std::sin(p.y * 1.7 + 2 * std::sin(p.x / 40)) * std::sin(p.y * 0.31);
    return {124 * grain, 86 * grain, 55 * grain};
}

/// Smooth noise of the paper's fibres, -1 to 1.
class Grain {
  public:
    explicit Grain(unsigned seed) : random_(seed) {
        std::uniform_real_distribution<double> any(-1, 1);
        for (double& value : values_) {
            value = any(random_);
        }
    }
    [[nodiscard]] double at(double x, double y) const {
        const int column = static_cast<int>(std::floor(x));
        const int row = static_cast<int>(std::floor(y));
        const double u = x - column;
        const double v = y - row;
        const auto value = [&](int c, int r) {
            return values_[(static_cast<unsigned>(c) & 63U) * 64 + (static_cast<unsigned>(r) & 63U)];
        };
        return (value(column, row) * (1 - u) + value(column + 1, row) * u) * (1 - v) +
               (value(column, row + 1) * (1 - u) + value(column + 1, row + 1) * u) * v;
    }
    double noise(double sigma) { return std::normal_distribution<double>(0, sigma)(random_); }

  private:
    std::mt19937 random_;
    std::array<double, 4096> values_{};
};

bool isOnFilm(Spot p) {
    return p.x > 0 && p.y > 0 && p.x < kWide && p.y < kHigh;
}

Colour seen(Spot p, const Grain& grain) {
    if (!isOnFilm(p)) {
        return times(table(p), light(p));
    }
    Colour colour = times({238, 236, 230}, light(p));
    const double bright = folds(p) * (1 + 0.025 * grain.at(p.x * 2.3, p.y * 2.1) + 0.02 * grain.at(p.x / 6, p.y / 6));
    colour = times(times(colour, {bright, bright, bright}), stain(p));
    const auto [off, pen] = nearestStroke(p);
    const double soft = 0.35;  // mm
    const double cover = std::clamp(0.5 - off / soft, 0.0, 1.0) * (0.9 + 0.1 * grain.at(p.x, p.y * 0.7));
    return times(colour, between({1, 1, 1}, inkOf(pen), cover));
}

}  // namespace

FilmSpot filmSpot(int column, int row) {
    const Spot p = spotAt(column + 0.5, row + 0.5);
    const auto [off, pen] = nearestStroke(p);
    const double inside = std::min({p.x, p.y, kWide - p.x, kHigh - p.y});
    const bool isFilm = inside > 2;
    return {inside < -2, isFilm && off < -0.25 ? std::optional<Pen>(pen) : std::nullopt, isFilm && off > 1.5,
            std::abs(fromCup(p) + 1) < 4};
}

std::array<FilmTick, 4> filmTicks() {
    std::array<FilmTick, 4> ticks;
    for (std::size_t n = 0; n < ticks.size(); ++n) {
        ticks[n] = {photoOf(kTicks[n]), {kTicks[n].x, kTicks[n].y}};
    }
    return ticks;
}

void photographFilm(const std::filesystem::path& file, unsigned seed) {
    GDALAllRegister();
    Grain grain(seed);
    GDALDriver* memory = GetGDALDriverManager()->GetDriverByName("MEM");
    GDALDriver* jpeg = GetGDALDriverManager()->GetDriverByName("JPEG");
    GDALDataset* picture = memory->Create("", kPhotoColumns, kPhotoRows, 3, GDT_Byte, nullptr);
    std::vector<std::uint8_t> line(std::size_t{kPhotoColumns} * 3);
    bool isWritten = true;
    for (int row = 0; row < kPhotoRows; ++row) {
        for (int column = 0; column < kPhotoColumns; ++column) {
            const Colour colour = seen(spotAt(column + 0.5, row + 0.5), grain);
            for (std::size_t band = 0; band < 3; ++band) {
                const double value = std::clamp(colour[band] + grain.noise(2.5), 0.0, 255.0);
                line[static_cast<std::size_t>(column) * 3 + band] = static_cast<std::uint8_t>(std::lround(value));
            }
        }
        isWritten = isWritten && picture->RasterIO(GF_Write, 0, row, kPhotoColumns, 1, line.data(), kPhotoColumns, 1,
                                                   GDT_Byte, 3, nullptr, 3, 0, 1, nullptr) == CE_None;
    }
    CPLStringList options;
    options.SetNameValue("QUALITY", "60");
    GDALDataset* copy = jpeg->CreateCopy(file.c_str(), picture, FALSE, options.List(), nullptr, nullptr);
    isWritten = isWritten && copy != nullptr;
    GDALClose(copy);
    GDALClose(picture);
    if (!isWritten) {
        throw std::runtime_error("cannot write " + file.string());
    }
}

}  // namespace crosstick::testing
