// What a file's report makes of a sheet: one, or an error; its numbers are finite.
#include <cmath>
#include <cstdlib>

#include "core/sheets/sheet_file.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace crosstick;
    const auto report = sheets::unpackReport({sheets::messages::kReport, {data, data + size}});
    if (!report) {
        return 0;
    }
    const auto sheet = sheets::sheetFrom(*report, "a.tif", Uuid{});
    if (sheet && !(sheet->scale.denominator >= 1 && std::isfinite(sheet->placement.corner.easting.value()) &&
                   std::isfinite(sheet->placement.eastPerColumn))) {
        std::abort();
    }
    return 0;
}
