#include "tests/press/desk.h"

#include <gtest/gtest.h>

#include "tests/places.h"
#include "ui/press/gui_start.h"

namespace crosstick::testing {
namespace {

/// What a command that prints has on its desk: Qt without a window, and the faces.
struct Desk {
    press::GuiStart gui;
    Result<press::Faces> faces = press::Faces::open(places::share() / "faces");
};

const Desk& desk() {
    static const Desk once;
    return once;
}

}  // namespace

const press::Faces& faces() {
    EXPECT_TRUE(desk().faces.has_value());
    return *desk().faces;
}

press::FilmSet composed(const plan::Plan& plan, const press::FilmsOrder& order) {
    auto set = press::composeFilms(order);
    EXPECT_TRUE(set.has_value()) << (set ? "" : std::string(set.error().fault.name)) << ' ' << plan.heading().name;
    return set ? std::move(*set) : press::FilmSet{};
}

press::FilmSet composed(const plan::Plan& plan) {
    return composed(plan, {plan, plan.films()});
}

std::string pdfOf(const plan::Plan& plan, const press::FilmSet& set) {
    const auto bytes = press::pdfBytes(press::pdfPages(set), press::pdfFacts(plan), faces(), press::paperInks());
    EXPECT_TRUE(bytes.has_value());
    return bytes.value_or(std::string{});
}

}  // namespace crosstick::testing
