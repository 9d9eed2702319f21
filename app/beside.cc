#include "app/beside.h"

namespace crosstick::app {

std::string asSeenFrom(const std::filesystem::path& folder, const std::filesystem::path& file) {
    const auto relative =
        std::filesystem::proximate(std::filesystem::absolute(file), std::filesystem::absolute(folder));
    return relative.empty() || *relative.begin() == ".." ? std::filesystem::absolute(file).string() : relative.string();
}

}  // namespace crosstick::app
