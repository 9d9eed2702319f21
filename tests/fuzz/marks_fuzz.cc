// Any bytes as a list of marks: each row is a mark with finite numbers or a short error, and the whole is bounded.

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "core/registration/fit.h"
#include "core/registration/mark_rows.h"

namespace {

using namespace crosstick::registration;

void require(bool claim) {
    if (!claim) {
        std::abort();
    }
}

void checkError(const crosstick::Error& error) {
    require(!error.fault.name.empty());
    for (const crosstick::Argument& argument : error.arguments) {
        if (const auto* text = std::get_if<std::string>(&argument.value)) {
            require(text->size() <= 200 && text->find('\n') == std::string::npos);
        }
    }
}

void checkRows(const Rows<Mark>& rows) {
    require(!rows.good.empty() || !rows.bad.empty());
    require(rows.bad.size() <= kMostBad + 1);
    for (const crosstick::Error& error : rows.bad) {
        checkError(error);
    }
    for (const Mark& mark : rows.good) {
        require(isFinite(mark.place.easting) && isFinite(mark.place.northing));
    }
    constexpr std::size_t kFew = 50;  // an error of the fit is one; how long many take is no matter here
    if (rows.good.size() <= kFew) {
        if (const auto fit = fitMarks(rows.good); !fit) {
            checkError(fit.error());
        }
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(data, data + size);
    for (const char* crs : {"", "EPSG:32618"}) {
        auto grid = PrintedGrid::of(crs);
        require(grid.has_value());
        if (const auto rows = readMarks(text, *grid)) {
            checkRows(*rows);
        } else {
            checkError(rows.error());
        }
    }
    static_cast<void>(readPoints(text));
    return 0;
}
