#pragma once

#include <optional>
#include <string>
#include <vector>

#include <CLI/CLI.hpp>

#include "core/plan/plan.h"

namespace crosstick::app {

/// By which rule times are to be made.
struct TimingOptions {
    std::string rule, going;
    std::optional<double> rate;
};

void addTimingOptions(CLI::App& command, TimingOptions& options);
/// A heading with what was said in place of its own.
[[nodiscard]] plan::Heading withTiming(plan::Heading heading, const TimingOptions& options);
/// The same of a plan, for one answer: its file stays as it is.
[[nodiscard]] plan::Plan withTiming(const plan::Plan& plan, const TimingOptions& options);

/// A date-time group or an ISO time.
[[nodiscard]] Result<Instant> parseMoment(const std::string& text);
/// For CLI::Option::check: empty where it is a moment, else what is wrong.
[[nodiscard]] std::string momentFault(const std::string& text);

/// For CLI::Option::check: empty where movement::parsePreparation() reads it, else what is wrong.
[[nodiscard]] std::string preparationFault(const std::string& text);

}  // namespace crosstick::app
