#include "ui/table/covered_labels.h"

#include <gtest/gtest.h>

#include "core/drawing/occupancy.h"
#include "core/plan/edits.h"
#include "tests/movement/kettle_plan.h"
#include "ui/table/inker.h"
#include "ui/table/touch.h"

namespace crosstick::table {
namespace {

constexpr Uuid kLower{{1}};
constexpr Uuid kUpper{{2}};
constexpr Uuid kFirst{{11}};
constexpr Uuid kSecond{{12}};

/// Two films with a phase line each, so close that their names at both ends overlap.
Scene twoLines(double apart) {
    plan::Plan plan = movement::kettlePlan();
    plan::PlanBuilder bare(plan);
    for (const plan::FilmPtr& film : plan.films()) {
        bare.removeFilm(film->id);
    }
    bare.registration(plan::Registration{movement::at(652300, 5096200), movement::at(659000, 5104500), {}, {}});
    plan = std::move(bare).build();
    plan = plan::withFilm(plan, kLower, "LOWER", {});
    plan = plan::withFilm(plan, kUpper, "UPPER", {});
    const auto add = [&](const Uuid& id, const char* name, double north, const Uuid& film) {
        plan::Measure line;
        line.id = id;
        line.kind = "phase-line";
        line.name = name;
        line.points = {movement::at(653000, north), movement::at(656000, north)};
        plan = plan::withMeasure(plan, line, film);
    };
    add(kFirst, "SLATE", 5100000, kLower);
    add(kSecond, "CHALK", 5100000 + apart, kUpper);
    Scene scene;
    scene.plan = plan;
    scene.films = {kLower, kUpper};
    return scene;
}

std::size_t lettersOf(const std::vector<FilmInk>& films, const plan::ItemId& item) {
    std::size_t letters = 0;
    for (const FilmInk& film : films) {
        for (const std::size_t n : film.shown) {
            if (film.engraved->items[n].item != item) {
                continue;
            }
            const auto covered = film.covered.find(n);
            const drawing::Drawing marks = covered == film.covered.end()
                                               ? film.engraved->items[n].drawing
                                               : withoutLetters(film.engraved->items[n], covered->second);
            for (const drawing::Mark& mark : marks.marks) {
                letters += std::holds_alternative<drawing::Text>(mark) ? 1U : 0U;
            }
        }
    }
    return letters;
}

TEST(CoveredLabels, OfTwoThatOverlapTheWorkingFilmsIsKept) {
    Scene scene = twoLines(20);
    const std::size_t all = lettersOf(*inkFilms(twoLines(2000)), kFirst);
    ASSERT_GT(all, 0U);
    for (const auto& [working, above, below] :
         {std::tuple(kUpper, kSecond, kFirst), std::tuple(kLower, kFirst, kSecond)}) {
        scene.working = working;
        const auto films = inkFilms(scene);
        ASSERT_TRUE(films);
        EXPECT_EQ(lettersOf(*films, above), all);
        EXPECT_EQ(lettersOf(*films, below), 0U) << "its lines stay, its letters would be read through";
    }
}

TEST(CoveredLabels, WhereNothingOverlapsEverythingStays) {
    const auto films = inkFilms(twoLines(2000));
    ASSERT_TRUE(films);
    for (const FilmInk& film : *films) {
        EXPECT_TRUE(film.covered.empty());
    }
}

TEST(CoveredLabels, AFilmHidesNoneOfItsOwn) {
    Scene scene = twoLines(20);
    scene.films = {kLower};
    const auto films = inkFilms(scene);
    ASSERT_TRUE(films);
    EXPECT_TRUE(films->front().covered.empty());
}

TEST(CoveredLabels, LinesAreNeverLeftOut) {
    Scene scene = twoLines(20);
    scene.working = kUpper;
    const auto films = inkFilms(scene);
    ASSERT_TRUE(films);
    const FilmInk& lower = films->front();
    ASSERT_FALSE(lower.engraved->items.empty());
    const symbols::EngravedItem& line = lower.engraved->items.front();
    std::size_t strokes = 0;
    std::size_t left = 0;
    for (const drawing::Mark& mark : line.drawing.marks) {
        strokes += std::holds_alternative<drawing::Stroke>(mark) ? 1U : 0U;
    }
    ASSERT_FALSE(lower.covered.empty());
    for (const drawing::Mark& mark : withoutLetters(line, lower.covered.begin()->second).marks) {
        left += std::holds_alternative<drawing::Stroke>(mark) ? 1U : 0U;
    }
    EXPECT_EQ(left, strokes);
    EXPECT_GT(strokes, 0U);
}

TEST(CoveredLabels, NothingIsTakenHoldOfWhereALabelIsLeftOut) {
    Scene scene = twoLines(20);
    scene.working = kUpper;
    const auto films = inkFilms(scene);
    ASSERT_TRUE(films);
    const FilmInk& lower = films->front();
    ASSERT_FALSE(lower.engraved->items.empty());
    for (const symbols::Part& part : lower.engraved->items.front().parts) {
        const auto lying = lyingAt(*films, lower.frame.filmToGrid(part.box.middle), {}, Metres(0));
        EXPECT_TRUE(!lying || lying->item == kSecond);
    }
}

// Law: what is painted of letters overlaps nothing painted above it.
TEST(CoveredLabels, InTheWholeDemoNoLetterLiesUnderAnotherFilmsInk) {
    Scene scene;
    const plan::Registration window{movement::at(652300, 5096200), movement::at(659000, 5104500), {}, {}};
    scene.plan = std::move(plan::PlanBuilder(movement::kettlePlan()).registration(window)).build();
    for (const plan::FilmPtr& film : scene.plan.films()) {
        scene.films.push_back(film->id);
    }
    std::size_t kept = 0;
    std::size_t out = 0;
    for (const plan::FilmPtr& working : scene.plan.films()) {
        scene.working = working->id;
        const auto films = inkFilms(scene);
        ASSERT_TRUE(films);
        drawing::Occupancy above;
        for (auto film = films->rbegin(); film != films->rend(); ++film) {
            std::vector<drawing::TurnedBox> own;
            for (const std::size_t n : film->shown) {
                const auto covered = film->covered.find(n);
                const auto& parts = film->engraved->items[n].parts;
                for (std::size_t p = 0; p < parts.size(); ++p) {
                    drawing::TurnedBox box = parts[p].box;
                    box.middle = films->back().frame.gridToFilm(film->frame.filmToGrid(box.middle));
                    if (covered != film->covered.end() && covered->second.contains(p)) {
                        ++out;
                        continue;
                    }
                    if (parts[p].what == symbols::Part::What::Letters) {
                        EXPECT_TRUE(above.isFree(box, 0));
                        ++kept;
                    }
                    own.push_back(box);
                }
            }
            for (const drawing::TurnedBox& box : own) {
                above.take(box);
            }
        }
    }
    EXPECT_GT(kept, 4 * out) << "few are left out";
}

}  // namespace
}  // namespace crosstick::table
