#pragma once

#include <memory>
#include <string>

#include <proj.h>

#include "core/units/result.h"

/// PROJ's objects with their owners; for the files of this folder.
namespace crosstick::geodesy {

struct FreeContext {
    void operator()(PJ_CONTEXT* context) const { proj_context_destroy(context); }
};
struct FreePj {
    void operator()(PJ* pj) const { proj_destroy(pj); }
};
using Context = std::unique_ptr<PJ_CONTEXT, FreeContext>;
using Pj = std::unique_ptr<PJ, FreePj>;

/// A context of its own for one thread at a time: silent, and without a network.
[[nodiscard]] Context newContext();
[[nodiscard]] std::string textOrEmpty(const char* text);
/// As much of a definition as fits in a line.
[[nodiscard]] std::string shortened(const std::string& crs);
/// A bound CRS carries its way to WGS 84 with it; what it is, its base tells.
[[nodiscard]] Pj withoutBounds(PJ_CONTEXT* context, const PJ* crs);
/// Any CRS, the horizontal part of a compound one. Errors: geodesy/unknown-crs.
[[nodiscard]] Result<Pj> anyCrs(PJ_CONTEXT* context, const std::string& text);
/// Errors: geodesy/unknown-crs, geodesy/crs-not-projected.
[[nodiscard]] Result<Pj> projected(PJ_CONTEXT* context, const std::string& text);
[[nodiscard]] double metresPerUnitOf(PJ_CONTEXT* context, const PJ* crs);
/// Easting or longitude first on both sides; null where PROJ knows no way.
[[nodiscard]] Pj operation(PJ_CONTEXT* context, const PJ* from, const PJ* to);
[[nodiscard]] bool isGood(const PJ_COORD& c);

}  // namespace crosstick::geodesy
