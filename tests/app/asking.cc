#include "asking.h"

#include <sstream>

#include "tests/places.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::app {

nlohmann::json Said::json() const {
    auto read = nlohmann::json::parse(out, nullptr, false);
    return read.is_array() ? read : nlohmann::json();
}

Said said(std::vector<std::string> arguments, const std::string& standardInput) {
    using namespace std::chrono;
    std::istringstream in(standardInput);
    std::ostringstream out;
    std::ostringstream err;
    const Instant noon = sys_days(2026y / November / 25) + 12h;
    const Surroundings surroundings{in, out, err, places::share(), testing::reader(), noon, 1};
    const Exit exit = run(std::move(arguments), surroundings);
    return {exit, out.str(), err.str()};
}

}  // namespace crosstick::app
