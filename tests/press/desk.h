#pragma once

#include "tests/film/printed_plan.h"
#include "ui/press/film_sheet.h"

namespace crosstick::testing {

/// The bundled faces, read once for the whole program of tests.
[[nodiscard]] const press::Faces& faces();

/// Films of a plan as they come out by default, composed; fails the test where they cannot be.
[[nodiscard]] press::FilmSet composed(const plan::Plan& plan, const press::FilmsOrder& order);
[[nodiscard]] press::FilmSet composed(const plan::Plan& plan);
[[nodiscard]] std::string pdfOf(const plan::Plan& plan, const press::FilmSet& set);

}  // namespace crosstick::testing
