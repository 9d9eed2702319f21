#include "core/drafting/renaming.h"

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/drafting/made_lines.h"

namespace crosstick::drafting {
namespace {

class Stroke : public ::testing::Test {
  protected:
    IdSource ids{6};
    plan::FilmId film = ids.next();
    plan::Plan plan = plan::withFilm(plan::Plan{}, film, "MOVE", {});
    plan::ItemId id = ids.next();

    void put(const char* kind, Line points) {
        plan::Measure measure;
        measure.id = id;
        measure.kind = kind;
        measure.points = std::move(points);
        plan = plan::withMeasure(plan, std::move(measure), film);
    }
    [[nodiscard]] plan::MeasurePtr as(const char* kind) { return become(plan, id, *measures::find(kind)).measure(id); }
};

TEST_F(Stroke, ALineBecomesAnotherWithTheNextFreeName) {
    put("free-line", {at(0, 0), at(100, 0), at(200, 50)});
    EXPECT_EQ(as("phase-line")->kind, "phase-line");
    EXPECT_EQ(as("phase-line")->name, "A");
    EXPECT_EQ(as("boundary")->points.size(), 3U);
    EXPECT_EQ(as("assembly-area")->kind, "assembly-area");
    EXPECT_EQ(as("named-area-of-interest")->number, "1");
}

TEST_F(Stroke, WhatItsPointsDoNotSufficeForItDoesNotBecome) {
    put("free-line", {at(0, 0), at(100, 0)});
    for (const char* kind : {"assembly-area", "checkpoint", "ambush", "order-of-march"}) {
        EXPECT_EQ(as(kind)->kind, "free-line") << kind;
    }
}

TEST_F(Stroke, ALetterThatItWasGivenGoesForTheKindsOwnNext) {
    put("free-line", {at(0, 0), at(100, 0)});
    plan::Measure stroke = *plan.measure(id);
    stroke.name = "C";
    plan::Measure first = stroke;
    first.id = ids.next();
    first.kind = "phase-line";
    first.name = "A";
    plan = std::move(plan::PlanBuilder(plan).put(stroke).put(first)).build();
    EXPECT_EQ(as("phase-line")->name, "B");
    EXPECT_EQ(as("boundary")->name, measures::find("boundary")->naming == measures::Naming::Letter ? "A" : "");
}

TEST_F(Stroke, ANameThatItHasStays) {
    put("free-line", {at(0, 0), at(100, 0)});
    plan::Measure named = *plan.measure(id);
    named.name = "FLINT";
    plan = std::move(plan::PlanBuilder(plan).put(named)).build();
    EXPECT_EQ(as("phase-line")->name, "FLINT");
}

TEST_F(Stroke, APlainLineThatIsCalledByAKindIsThat) {
    put("free-line", {at(0, 0), at(100, 0), at(200, 50)});
    const auto called = [&](const char* words) { return *renamed(plan, id, words).measure(id); };
    EXPECT_EQ(called("ld trivet").kind, "line-of-departure");
    EXPECT_EQ(called("ld trivet").name, "TRIVET");
    EXPECT_EQ(called("phase line old mill").name, "OLD MILL");
    EXPECT_EQ(called("nai 7").number, "7");
    EXPECT_EQ(called("obj cobnut").kind, "objective");
    EXPECT_EQ(called("pl").name, "A") << "the next free letter";
    EXPECT_EQ(called("bdy 2/C 3/C").kind, "boundary");
    EXPECT_EQ(called("bdy 2/C 3/C").fields.at("left_unit"), "2/C");
    EXPECT_EQ(called("bdy 2/C 3/C").fields.at("right_unit"), "3/C");
    EXPECT_EQ(called("bdy 2/C 3/C").name, "");
    for (const char* words : {"old mill", "cp 3", "pline x", "wall"}) {  // no kind, or one that a line cannot be
        EXPECT_EQ(called(words).kind, "free-line") << words;
        EXPECT_EQ(called(words).name, words);
    }
    plan = renamed(plan, id, "pl bodkin");
    EXPECT_EQ(called("ld trivet").kind, "phase-line") << "what is something already is only renamed";
    EXPECT_EQ(called("ld trivet").name, "LD TRIVET");
}

}  // namespace
}  // namespace crosstick::drafting
