#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/terrain/printed_paper.h"

namespace crosstick::testing {
namespace {

constexpr terrain::Colour kLand{252, 250, 242}, kWood{204, 226, 186}, kSea{214, 233, 244}, kBlack{30, 28, 28},
    kBrown{178, 116, 62}, kBlue{40, 116, 170}, kOrange{240, 188, 96}, kYellow{250, 226, 150}, kWhite{255, 255, 255},
    kGrid{95, 112, 130};

/// Writes lines one after the other, each remembered.
class Press {
  public:
    explicit Press(const SheetWish& wish)
        : side_(wish.sideMm), random_(wish.seed), paper_(side_, side_, wish.pixelsPerMm, kLand) {}

    MadeSheet print() {
        for (int n = 0; n < 5; ++n) {
            paper_.blot({at(0, side_), at(0, side_)}, at(12, 30), kWood);
        }
        printLake();
        printContours();
        printStreams();
        printWays();
        printGridAndNames();
        return {paper_.pixels(), paper_.pixelsPerMm(), std::move(lines_)};
    }

  private:
    double side_;
    std::mt19937 random_;
    PrintedPaper paper_;
    std::vector<KnownLine> lines_;

    double at(double from, double to) { return std::uniform_real_distribution<double>(from, to)(random_); }

    /// A way across the sheet that swings to and fro, round a middle that is a share of the side, and never meets
    /// itself.
    PaperLine wander(double middle, double restless, bool acrossPage) {
        struct Swing {
            double reach, length, phase;
        };
        std::vector<Swing> swings;
        for (const auto& [reach, length] : {std::pair(0.06, 0.5), std::pair(0.03, 0.2), std::pair(0.012, 0.09)}) {
            swings.push_back({at(0.5, 1) * reach * side_ * restless, at(0.8, 1.2) * length * side_, at(0, 6.28)});
        }
        PaperLine line;
        for (double y = 0; y <= side_; y += 0.1) {
            double x = middle * side_;
            for (const Swing& swing : swings) {
                x += swing.reach * std::sin(2 * std::numbers::pi * y / swing.length + swing.phase);
            }
            line.push_back(acrossPage ? PaperPoint{y, x} : PaperPoint{x, y});
        }
        return line;
    }
    PaperLine wander(double restless) { return wander(at(0.15, 0.85), restless, at(0, 1) < 0.5); }

    void remember(const char* style, PaperLine line) { lines_.push_back({style, std::move(line)}); }

    void printLake() {
        const PaperPoint middle{at(0.72, 0.78) * side_, at(0.72, 0.78) * side_};
        const double radius = at(0.11, 0.15) * side_;
        paper_.blot(middle, radius, kSea);
        PaperLine shore;
        for (int n = 0; n <= 720; ++n) {
            const double turn = n * std::numbers::pi / 360;
            const double edge = radius * (1 + 0.2 * std::sin(3 * turn) + 0.1 * std::sin(7 * turn + 1));
            shore.push_back({middle.x + edge * std::cos(turn), middle.y + edge * std::sin(turn)});
        }
        paper_.stroke(shore, kBlue, 0.2);
        remember("shore", std::move(shore));
    }

    /// Hills with spurs: ring beyond ring, 0.6 to 2.4 mm apart: slopes of 33 degrees and less at 10 m and 1:25,000.
    void printContours() {
        for (int hill = 0; hill < 3; ++hill) {
            const PaperPoint top{((hill & 1) == 0 ? 0.24 : 0.76) * side_ + at(-3, 3),
                                 ((hill & 2) == 0 ? 0.24 : 0.76) * side_ + at(-3, 3)};
            const double phase = at(0, 6);
            for (int ring = 1; ring < 16; ++ring) {
                PaperLine line;
                for (int n = 0; n <= 900; ++n) {
                    const double turn = n * std::numbers::pi / 450;
                    const double spacing = 1.4 + 0.6 * std::sin(2 * turn + phase);
                    const double spurs = 0.15 * std::sin(5 * turn + phase) + 0.05 * std::sin(11 * turn);
                    const double radius = (2 + ring * spacing) * (1 + spurs);
                    line.push_back({top.x + radius * std::cos(turn), top.y + radius * std::sin(turn)});
                }
                paper_.stroke(line, kBrown, ring % 5 == 0 ? 0.22 : 0.12);
                if (ring % 3 == 0) {
                    remember("contour", std::move(line));
                }
            }
        }
    }

    void printStreams() {
        for (int n = 0; n < 2; ++n) {  // none through the lake
            PaperLine line = wander((n + 1) * 0.25 + at(-0.03, 0.03), 1.1, false);
            paper_.strokeGrowing(line, kBlue, 0.15, 0.4);
            remember("stream", std::move(line));
        }
    }

    void printWays() {
        struct Road {
            const char* style;
            terrain::Colour fill;
            double casing, width;
        };
        for (const auto& [style, on, off, width] :
             {std::tuple("path", 1.2, 0.8, 0.18), std::tuple("track", 3.0, 0.8, 0.25)}) {
            PaperLine line = wander(1.0);
            paper_.stroke(line, kBlack, width, {on, off});
            remember(style, std::move(line));
        }
        PaperLine single = wander(0.8);
        paper_.stroke(single, kBlack, 0.35);
        remember("single line", std::move(single));
        std::vector<std::pair<Road, PaperLine>> roads;
        for (const Road& road : {Road{"white road", kWhite, 0.7, 0.45}, Road{"yellow road", kYellow, 0.75, 0.5},
                                 Road{"orange road", kOrange, 0.9, 0.6}}) {
            roads.emplace_back(road, wander(0.7));
        }
        for (const auto& [road, line] : roads) {  // all casings first: junctions open into each other
            paper_.stroke(line, kBlack, road.casing);
        }
        for (auto& [road, line] : roads) {
            paper_.stroke(line, road.fill, road.width);
            remember(road.style, std::move(line));
        }
    }

    void printGridAndNames() {
        for (double mm = 15; mm < side_; mm += 40) {
            paper_.stroke({{mm, 0}, {mm, side_}}, kGrid, 0.12);
            paper_.stroke({{0, mm}, {side_, mm}}, kGrid, 0.12);
        }
        constexpr std::array kNames{"ALTER", "KNOLL", "TARN", "OKE", "NORTON", "LOAN"};
        for (int n = 0; n < 30; ++n) {
            const PaperPoint place{at(0, side_ - 15), at(5, side_)};
            paper_.letters(kNames[static_cast<std::size_t>(n) % kNames.size()], place, at(1.6, 2.6),
                           n % 5 == 0 ? kBlue : kBlack);
        }
        for (int n = 0; n < 40; ++n) {
            const PaperPoint place{at(2, side_ - 2), at(2, side_ - 2)};
            paper_.stroke({place, {place.x + at(0.4, 1), place.y}}, kBlack, at(0.4, 0.8));
        }
    }
};

}  // namespace

MadeSheet madeSheet(const SheetWish& wish) {
    return Press(wish).print();
}

}  // namespace crosstick::testing
