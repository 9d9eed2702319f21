#pragma once

#include <string_view>

#include <QString>

namespace crosstick::look {

/// A word of the core (name of a measure, of a field, caption of a step) in the window's language: the core speaks
/// English and knows no translator.
[[nodiscard]] QString spoken(std::string_view english);

}  // namespace crosstick::look
