#include "ui/table/inker.h"

#include <random>

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/movement/kettle_plan.h"

namespace crosstick::table {
namespace {

Scene sceneOf(const plan::Plan& plan) {
    Scene scene;
    scene.plan = plan;
    for (const plan::FilmPtr& film : plan.films()) {
        scene.films.push_back(film->id);
    }
    for (const plan::RoutePtr& route : plan.routes()) {
        if (auto figures = movement::routeFigures(plan, *route, nullptr, nullptr)) {
            scene.figures.emplace(route->id, std::move(*figures));
        }
    }
    return scene;
}

std::string described(const std::vector<FilmInk>& films) {
    std::string text;
    for (const FilmInk& film : films) {
        text += "film " + film.film->name + '\n' + describe(film.ticks);
        for (const std::size_t item : film.shown) {
            text += describe(film.engraved->items[item].drawing);
        }
    }
    return text;
}

plan::Plan printedDeclination(const plan::Plan& plan) {
    plan::Heading heading = plan.heading();
    heading.declination = plan::DeclinationSource::Sheet;
    return std::move(plan::PlanBuilder(plan).heading(heading)).build();
}

/// One of the things a hand does to a plan.
plan::Plan edited(const plan::Plan& plan, std::mt19937& random) {
    const auto pick = [&random](std::size_t count) {
        return std::uniform_int_distribution<std::size_t>(0, count - 1)(random);
    };
    std::vector<plan::MeasurePtr> measures;
    plan.measures().forEach([&](const plan::MeasurePtr& measure) { measures.push_back(measure); });
    const plan::ItemId item = measures[pick(measures.size())]->id;
    const plan::FilmId film = plan.films()[pick(plan.films().size())]->id;
    const Metres step(40.0 + static_cast<double>(pick(5)));
    switch (pick(6)) {
        case 0:
            return plan::movedBy(plan, item, step, step * -1);
        case 1: {
            const plan::RoutePtr route = plan.routes()[pick(plan.routes().size())];
            const std::size_t vertex = pick(route->vertices.size());
            const geodesy::PlanePoint from = route->vertices[vertex];
            return plan::withPoint(plan, route->id, vertex, {from.easting + step, from.northing});
        }
        case 2:
            return measures.size() > 3 ? plan::without(plan, item) : plan;
        case 3:
            return plan::shownOn(plan, item, film);
        case 4:
            return plan::restacked(plan, film, plan::Step::Up);
        default: {
            plan::Heading heading = plan.heading();
            heading.date = heading.date == CalendarDate{}
                               ? heading.date
                               : CalendarDate{std::chrono::sys_days(heading.date) + std::chrono::days(30)};
            return std::move(plan::PlanBuilder(plan).heading(heading)).build();
        }
    }
}

TEST(Inker, InksAfterAnyEditsWhatAFreshOneInks) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    plan::Plan plan = printedDeclination(movement::kettlePlan());
    plan = plan::withFilm(plan, Uuid{{77}}, "SECOND", {});
    Inker inker;
    for (int step = 0; step < 40; ++step) {
        const Scene scene = sceneOf(plan);
        const auto kept = inker.ink(scene);
        const auto fresh = inkFilms(scene);
        ASSERT_TRUE(kept.has_value() && fresh.has_value());
        ASSERT_EQ(described(*kept), described(*fresh)) << "step " << step;
        plan = edited(plan, random);
    }
}

TEST(Inker, KeepsTheInkOfAFilmThatNothingTouched) {
    plan::Plan plan = printedDeclination(movement::kettlePlan());
    plan = plan::withFilm(plan, Uuid{{77}}, "SECOND", {});
    plan::Measure alone;
    alone.id = Uuid{{78}};
    alone.kind = "checkpoint";
    alone.points = {movement::at(655060, 5100640)};
    plan = plan::withMeasure(plan, alone, Uuid{{77}});
    Inker inker;
    const auto before = inker.ink(sceneOf(plan));
    const auto after = inker.ink(sceneOf(plan::movedBy(plan, alone.id, Metres(50), Metres(0))));
    ASSERT_TRUE(before.has_value() && after.has_value());
    for (std::size_t n = 0; n < before->size(); ++n) {
        EXPECT_EQ((*before)[n].engraved == (*after)[n].engraved, (*before)[n].film->id != (Uuid{{77}}));
    }
}

}  // namespace
}  // namespace crosstick::table
