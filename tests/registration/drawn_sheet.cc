#include "tests/registration/drawn_sheet.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace crosstick::testing {
namespace {

using registration::Mark;
using registration::PixelPoint;

constexpr double kWest = 650000, kSouth = 5097000, kWide = 8000, kHigh = 10000;  // m

struct Ground {
    double east = 0, north = 0;  ///< metres from the sheet's south-west corner
};

/// Both ways between a sheet and its picture.
class Lens {
  public:
    explicit Lens(const SheetLook& look) : look_(look) {
        metresPerPixel_ = look.denominator * 0.0254 / look.dotsPerInch;
        turn_ = look.turn * std::numbers::pi / 180;
        wide_ = kWide / metresPerPixel_ * 1.06 + 2 * look.margin;
        high_ = kHigh / metresPerPixel_ * 1.06 + 2 * look.margin;
    }
    [[nodiscard]] int columns() const { return static_cast<int>(wide_); }
    [[nodiscard]] int rows() const { return static_cast<int>(high_); }
    [[nodiscard]] double metresPerPixel() const { return metresPerPixel_; }

    [[nodiscard]] PixelPoint pixel(Ground g) const {
        const double u = (g.east - kWide / 2) / (kHigh / 2);
        const double v = (g.north - kHigh / 2) / (kHigh / 2);
        const double depth = 1 + look_.aslant * (v + 0.3 * u);
        const double x = u / depth * kHigh / 2 / metresPerPixel_;
        const double y = v / depth * kHigh / 2 / metresPerPixel_;
        const double bend = look_.bulge * std::sin(2.2 * u + 0.4) * std::cos(1.7 * v);
        return {wide_ / 2 + x * std::cos(turn_) + y * std::sin(turn_) + bend,
                high_ / 2 - y * std::cos(turn_) + x * std::sin(turn_) + 0.7 * bend};
    }
    /// By steps: the bend is small.
    [[nodiscard]] Ground ground(PixelPoint at) const {
        PixelPoint aim = at;
        Ground g;
        for (int n = 0; n < (look_.bulge > 0 ? 4 : 1); ++n) {
            g = flat(aim);
            const PixelPoint back = pixel(g);
            aim = {aim.x + at.x - back.x, aim.y + at.y - back.y};
        }
        return g;
    }

  private:
    SheetLook look_;
    double metresPerPixel_ = 1, turn_ = 0, wide_ = 0, high_ = 0;

    [[nodiscard]] Ground flat(PixelPoint at) const {
        const double right = at.x - wide_ / 2;
        const double down = at.y - high_ / 2;
        const double k = metresPerPixel_ / (kHigh / 2);
        const double x = (right * std::cos(turn_) + down * std::sin(turn_)) * k;
        const double y = (right * std::sin(turn_) - down * std::cos(turn_)) * k;
        const double depth = 1 / (1 - look_.aslant * (y + 0.3 * x));
        return {x * depth * kHigh / 2 + kWide / 2, y * depth * kHigh / 2 + kHigh / 2};
    }
};

/// Heights in metres, with their slopes.
struct Relief {
    double height = 0, byEast = 0, byNorth = 0;
};

Relief reliefAt(Ground g) {
    Relief r;
    const auto wave = [&](double size, double kx, double ky, double phase) {
        const double a = kx * g.east + ky * g.north + phase;
        r.height += size * std::sin(a);
        r.byEast += size * kx * std::cos(a);
        r.byNorth += size * ky * std::cos(a);
    };
    wave(70, 0.0011, 0.0007, 0.3);
    wave(45, -0.0016, 0.0021, 1.1);
    wave(16, 0.0042, 0.0031, 2.0);
    wave(6, -0.0107, 0.0083, 0.7);
    return r;
}

class Inker {
  public:
    Inker(const SheetLook& look, const Lens& lens) : look_(look), lens_(lens) {
        std::mt19937 random(look.seed);
        std::uniform_real_distribution<double> east(0, kWide);
        std::uniform_real_distribution<double> north(0, kHigh);
        for (int n = 0; n < 40; ++n) {
            names_.push_back({east(random), north(random)});
        }
    }
    [[nodiscard]] double grey(PixelPoint at) const {
        const Ground g = lens_.ground(at);
        const double frame = std::max({-g.east, g.east - kWide, -g.north, g.north - kHigh});  // above 0 outside
        double grey = 246;
        if (frame <= 0) {
            grey = inside(g);
        } else {
            figures(grey, g);
        }
        ink(grey, 30, std::abs(frame), 0.35);
        return grey - look_.shade * at.x / lens_.columns();
    }

  private:
    const SheetLook& look_;
    const Lens& lens_;
    std::vector<Ground> names_;

    /// Lays a line of a width in millimetres, its middle so many metres off.
    void ink(double& grey, double lineGrey, double metres, double widthMm) const {
        const double soft = lens_.metresPerPixel() * (1 + look_.blur);
        const double half = widthMm * look_.denominator / 2000;
        // A line as seen through a box of that softness: its part in the box.
        const double cover =
            std::max(0.0, std::min(metres + half, soft / 2) - std::max(metres - half, -soft / 2)) / soft;
        grey += (lineGrey - grey) * std::min(1.0, cover);
    }
    [[nodiscard]] double inside(Ground g) const {
        const Ground land{g.east + 9177.0 * look_.ground, g.north + 11003.0 * look_.ground};
        const Relief r = reliefAt(land);
        double grey =
            std::sin(land.east * 0.0013 + 1) + std::cos(land.north * 0.0017 + land.east * 0.0006) > 0.7 ? 214 : 246;
        const double slope = std::max(1e-4, std::hypot(r.byEast, r.byNorth));
        const double interval = look_.denominator / 2500;
        const double line = std::round(r.height / interval);
        ink(grey, 130, std::abs(r.height - line * interval) / slope, std::fmod(line, 5) == 0 ? 0.22 : 0.1);
        const double road = g.north - 4300 - 900 * std::sin(land.east * 0.0009);
        const double lean = std::hypot(1.0, 0.81 * std::cos(land.east * 0.0009));
        ink(grey, 50, std::abs(std::abs(road) / lean - look_.denominator / 2500), 0.15);
        for (const Ground& name : names_) {
            lettering(grey, g, name);
        }
        if (look_.grid == GridLines::Printed) {
            ink(grey, look_.gridGrey, std::abs(std::remainder(g.east, 1000)), look_.gridMm);
            ink(grey, look_.gridGrey, std::abs(std::remainder(g.north, 1000)), look_.gridMm);
        }
        return grey;
    }
    /// At the ends of the lines, outside the frame, the figures by which they are called.
    void figures(double& grey, Ground g) const {
        const double mm = look_.denominator / 1000;
        const Ground west{-5 * mm, 1000 * std::round(g.north / 1000) - mm};
        const Ground south{1000 * std::round(g.east / 1000) - 1.5 * mm, -4 * mm};
        for (const Ground& figure :
             {west, Ground{kWide + 2 * mm, west.north}, south, Ground{south.east, kHigh + 1.5 * mm}}) {
            const bool isNear = g.east > figure.east && g.east < figure.east + 3.5 * mm;
            if (isNear) {
                lettering(grey, g, figure);
            }
        }
    }
    /// Upright strokes, eight of them, 2.5 mm high: what a name is to a finder.
    void lettering(double& grey, Ground g, Ground name) const {
        const double mm = look_.denominator / 1000;
        const double right = (g.east - name.east) / mm;
        const double up = (g.north - name.north) / mm;
        if (right > 0 && right < 12 && up > 0 && up < 2.5) {
            ink(grey, 20, std::abs(std::remainder(right, 1.5)) * mm, 0.3);
        }
    }
};

}  // namespace

registration::GreyPicture DrawnSheet::picture() const {
    return {columns, rows, [this](sheets::PixelWindow window) -> Result<registration::GreyWindow> {
                registration::GreyWindow part{window, {}};
                for (int row = window.row; row < window.row + window.rows; ++row) {
                    const auto first = grey.begin() + static_cast<std::ptrdiff_t>(row) * columns + window.column;
                    part.grey.insert(part.grey.end(), first, first + window.columns);
                }
                return part;
            }};
}

Mark DrawnSheet::near(double across, double down) const {
    const PixelPoint aim{across * columns, down * rows};
    return *std::min_element(inner.begin(), inner.end(), [&](const Mark& a, const Mark& b) {
        return std::hypot(a.at.x - aim.x, a.at.y - aim.y) < std::hypot(b.at.x - aim.x, b.at.y - aim.y);
    });
}

DrawnSheet drawnSheet(const SheetLook& look) {
    const Lens lens(look);
    const Inker inker(look, lens);
    DrawnSheet sheet{lens.columns(), lens.rows(), {}, {}, {}};
    std::mt19937 random(look.seed);
    std::normal_distribution<double> noise(0, look.noise);
    sheet.grey.reserve(static_cast<std::size_t>(sheet.columns) * static_cast<std::size_t>(sheet.rows));
    for (int row = 0; row < sheet.rows; ++row) {
        for (int column = 0; column < sheet.columns; ++column) {
            const double grey = inker.grey({column + 0.5, row + 0.5}) + noise(random);
            sheet.grey.push_back(static_cast<std::uint8_t>(std::clamp(std::lround(grey), 0L, 255L)));
        }
    }
    for (int n = 0; n <= 10; ++n) {
        for (int e = 0; e <= 8; ++e) {
            const Mark mark{lens.pixel({e * 1000.0, n * 1000.0}),
                            {Metres(kWest + e * 1000), Metres(kSouth + n * 1000)}};
            (e > 0 && e < 8 && n > 0 && n < 10 ? sheet.inner : sheet.edge).push_back(mark);
        }
    }
    return sheet;
}

}  // namespace crosstick::testing
