#include "core/units/speech.h"

namespace crosstick {

std::string filled(std::string_view sentence, const std::vector<std::string>& parts) {
    std::string all;
    for (std::size_t at = 0; at < sentence.size(); ++at) {
        const bool isPlace =
            sentence[at] == '%' && at + 1 < sentence.size() && sentence[at + 1] >= '1' && sentence[at + 1] <= '9';
        const std::size_t part = isPlace ? static_cast<std::size_t>(sentence[at + 1] - '1') : parts.size();
        if (part < parts.size()) {
            all += parts[part];
            ++at;
        } else {
            all += sentence[at];
        }
    }
    return all;
}

}  // namespace crosstick
