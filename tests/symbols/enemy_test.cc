// With one pen, enemy strokes are two thin ones 0.85 apart; letters stay single (engraving A17).
#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include "core/measures/catalogue.h"
#include "tests/drawing/random_lines.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/made_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using testing::Made;
using testing::MadeFilm;

/// Red, but for what the trade keeps a colour for whoever's it is: green for obstacles, yellow for contamination
/// (trade.md 1.3, seen in the cited publications).
drawing::Ink inkOfEnemy(const measures::Entry& entry) {
    return entry.colour == measures::Colour::Obstacle        ? drawing::Ink::Green
           : entry.colour == measures::Colour::Contamination ? drawing::Ink::Yellow
                                                             : drawing::Ink::Red;
}

Made enemy(std::string_view kind) {
    Made made = testing::sample(kind, {100, 75});
    made.whose = plan::Whose::Enemy;
    return made;
}

TEST(OnePen, DrawsEverythingBlackAndTheEnemyInColourRed) {
    for (const measures::Entry& entry : measures::catalogue()) {
        for (const bool onePen : {false, true}) {
            MadeFilm film;
            film.add(enemy(entry.kind));
            if (onePen) {
                film.onePen();
            }
            for (const drawing::Mark& mark : film.drawn().marks) {
                const auto ink = std::visit([](const auto& one) { return one.ink; }, mark);
                EXPECT_EQ(ink, onePen ? drawing::Ink::Black : inkOfEnemy(entry)) << entry.kind;
            }
        }
    }
}

/// One whole contour: its arms leave no room for a second one.
bool isHollowHeaded(measures::Sign sign) {
    return sign == measures::Sign::MainAttack;
}

// What a sign is told by is doubled. What would be read as another sign if it stood twice is not: icons, echelon marks,
// teeth, ticks, hatching, extension lines.
TEST(OnePen, DoublesTheLineThatASignIsToldByAndNoLetter) {
    for (const measures::Entry& entry : measures::catalogue()) {
        if (entry.shape == measures::Shape::Text || entry.lies == measures::Lies::OnThePaper ||
            entry.sign == measures::Sign::TaskWords || entry.sign == measures::Sign::SlopeArrows) {
            continue;  // a slope is nobody's
        }
        MadeFilm single;
        single.add(enemy(entry.kind));
        MadeFilm doubled;
        doubled.add(enemy(entry.kind)).onePen();
        std::size_t strokes = 0;
        std::size_t thin = 0;
        for (const drawing::Mark& mark : doubled.drawn().marks) {
            if (const auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
                const bool isThin = stroke->width <= 0.30;
                thin += isThin ? 1 : 0;
                if (strokes++ == (isHollowHeaded(entry.sign) ? 1U : 0U)) {
                    EXPECT_TRUE(isThin) << entry.kind;
                    const bool isPaired = entry.sign != measures::Sign::FrontLine;  // a row and its inner arcs
                    EXPECT_TRUE(!isPaired || stroke->pieces.size() % 2 == 0) << entry.kind;
                }
            }
        }
        EXPECT_GT(thin, 0U) << entry.kind;
        EXPECT_EQ(testing::texts(single.drawn()).size(), testing::texts(doubled.drawn()).size()) << entry.kind;
    }
}

// A company's bar doubled would be a battalion's mark.
TEST(OnePen, LeavesEchelonMarksAndIconsAsTheyAre) {
    for (const char* words : {"inf coy", "inf bn", "mech inf coy"}) {
        Made made{.kind = "unit", .points = {{100, 75}}, .whose = plan::Whose::Enemy, .fields = {{"unit", words}}};
        MadeFilm colour;
        colour.add(made);
        MadeFilm onePen;
        onePen.add(made).onePen();
        const auto pens = [](const drawing::Drawing& drawing) {
            std::size_t count = 0;
            for (const drawing::Mark& mark : drawing.marks) {
                const auto* stroke = std::get_if<drawing::Stroke>(&mark);
                count += stroke != nullptr && stroke->width > 0.30 ? stroke->pieces.size() : 0;
            }
            return count;
        };
        // The frame alone changes from one stroke of the main pen to two thin ones.
        EXPECT_EQ(pens(onePen.drawn()), pens(colour.drawn()) - 1) << words;
    }
}

// The two strokes of a line lie 0.85 apart, also round a bend.
TEST(OnePen, StrokesLieApartByWhatLeavesSixTenthsWhite) {
    MadeFilm film;
    film.add(enemy("phase-line")).onePen();
    const drawing::Drawing drawn = film.drawn();
    const auto& stroke = std::get<drawing::Stroke>(drawn.marks.front());
    ASSERT_EQ(stroke.pieces.size(), 2U);
    for (const Point p : stroke.pieces[0].points) {
        EXPECT_NEAR(drawing::testing::distance(p, stroke.pieces[1].points), 0.85, 0.005);  // the mitre's point
    }
}

// Dashes are cut on the centre line first, so that both strokes agree.
TEST(OnePen, DashesOfBothStrokesBeginTogether) {
    Made made = enemy("phase-line");
    made.points = {{60, 75}, {140, 75}};
    made.standing = plan::Standing::Planned;
    MadeFilm film;
    film.add(made).onePen();
    const drawing::Drawing drawn = film.drawn();
    const auto& stroke = std::get<drawing::Stroke>(drawn.marks.front());
    ASSERT_GT(stroke.pieces.size(), 10U);
    for (std::size_t n = 0; n + 1 < stroke.pieces.size(); n += 2) {
        EXPECT_NEAR(stroke.pieces[n].points.front().x, stroke.pieces[n + 1].points.front().x, 1e-9);
        EXPECT_NEAR(stroke.pieces[n].points.back().x, stroke.pieces[n + 1].points.back().x, 1e-9);
    }
}

// B1: the box grows by 0.85 a side, so that its letters keep their room.
TEST(OnePen, BoxGrowsRoundItsLetters) {
    MadeFilm single;
    single.add(enemy("checkpoint"));
    MadeFilm doubled;
    doubled.add(enemy("checkpoint")).onePen();
    const auto width = [](const MadeFilm& film) { return drawing::extent(film.drawn()).width(); };
    EXPECT_NEAR(width(doubled) - width(single), 2 * 0.85 - 0.15, 0.01);  // the pen is thinner by 0.15
    for (const auto& box : testing::letterBoxes(doubled.drawn())) {
        EXPECT_GT(testing::clearance(box, doubled.drawn()), 0.6);
    }
}

// Its edge only curves, and nowhere on that side is it straight: the mark stands there all the same (engraving B3).
TEST(BattlePosition, HasItsMarkOnTheEnemysSideOfARoundEdge) {
    for (const auto& [azimuth, way] : {std::pair{"0", drawing::Vector{0, -1}}, std::pair{"90", drawing::Vector{1, 0}},
                                       std::pair{"180", drawing::Vector{0, 1}}}) {
        Made made{.kind = "battle-position", .points = {}, .number = "3", .fields = {{"enemy", azimuth}}};
        for (int n = 0; n < 36; ++n) {
            const double turn = n * 3.14159265358979 / 18;
            made.points.push_back({100 + 20 * std::cos(turn), 75 + 14 * std::sin(turn)});
        }
        MadeFilm film;
        drawing::Box mark;
        for (const drawing::Mark& one : film.add(made).drawn().marks) {
            if (const auto* fill = std::get_if<drawing::Fill>(&one)) {
                for (const drawing::Point p : fill->rings.front()) {
                    mark = mark.joined({p.x, p.y, p.x, p.y});
                }
            }
        }
        ASSERT_FALSE(mark.isEmpty()) << azimuth;
        EXPECT_GT(drawing::dot(mark.middle() - drawing::Point{100, 75}, way), 12) << azimuth;
    }
}

// Suspected and with one pen: every stroke of an outline runs level with its other one, none turns over at a sharp
// corner, where the ink of the two would cross.
TEST(Enemy, DashesOfBothStrokesOfAnOutlineNeverCross) {
    for (const char* kind : {"critical-point", "start-point", "observation-post", "contact-point"}) {
        Made made = testing::sample(kind, {100, 75});
        made.whose = plan::Whose::Enemy;
        made.standing = plan::Standing::Planned;
        MadeFilm film;
        film.onePen().add(made);
        const auto lines = testing::inkLines(film.drawn());
        int tried = 0;
        for (std::size_t n = 0; n < lines.size(); ++n) {
            for (std::size_t m = n + 1; m < lines.size(); ++m) {
                const drawing::Vector u = lines[n].to - lines[n].from;
                const drawing::Vector v = lines[m].to - lines[m].from;
                const double turned = drawing::cross(u, v);
                if (std::abs(turned) < 1e-6) {
                    continue;
                }
                const double share = drawing::cross(lines[m].from - lines[n].from, v) / turned;
                const double other = drawing::cross(lines[m].from - lines[n].from, u) / turned;
                constexpr double kEnd = 0.02;  // they meet at corners
                ++tried;
                EXPECT_FALSE(share > kEnd && share < 1 - kEnd && other > kEnd && other < 1 - kEnd) << kind;
            }
        }
        EXPECT_GT(tried, 20) << kind;
    }
}

}  // namespace
}  // namespace crosstick::symbols
