#pragma once

#include "core/sheets/foreign_reader.h"
#include "tests/places.h"

namespace crosstick::testing {

/// The reader of this build, with a small cache that all tests share.
[[nodiscard]] inline sheets::ForeignReader reader() {
    constexpr std::int64_t kSmall = std::int64_t{256} << 20;
    return {places::foreignReader(), sheets::SheetCache(places::sheetCache(), kSmall)};
}

}  // namespace crosstick::testing
