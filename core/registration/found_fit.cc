#include "core/registration/found_fit.h"

#include <algorithm>
#include <cmath>

namespace crosstick::registration {
namespace {

std::vector<Mark> soundMarks(std::span<const Mark> marks, const Fit& fit) {
    std::vector<Mark> sound;
    for (std::size_t n = 0; n < marks.size(); ++n) {
        if (!fit.residuals[n].isBlunder) {
            sound.push_back(marks[n]);
        }
    }
    return sound;
}

std::size_t sureOnes(const std::vector<Crossing>& crossings) {
    return static_cast<std::size_t>(
        std::count_if(crossings.begin(), crossings.end(), [](const Crossing& c) { return c.confidence >= kSure; }));
}

/// At the interval of the marks or, where no more than the marks' own are found at it, at a wider one.
Result<std::vector<Crossing>> search(const GreyPicture& picture, std::span<const Mark> marks, const Model& model,
                                     const worker::IsStopped& isStopped) {
    std::vector<Crossing> most;
    for (const Metres interval : intervalsOf(marks, model)) {
        auto crossings = findCrossings(picture, gridLattice(interval), marks, isStopped);
        if (!crossings) {
            return crossings;
        }
        if (most.empty() || sureOnes(*crossings) > sureOnes(most)) {
            most = std::move(*crossings);
        }
        if (sureOnes(most) > marks.size() + 1) {
            break;
        }
    }
    return most;
}

/// The sure crossings where no mark stands; every second, third, ... where they would be more than a fit takes.
std::vector<std::size_t> besideMarks(const std::vector<Crossing>& crossings, std::span<const Mark> marks) {
    std::vector<std::size_t> list;
    for (std::size_t n = 0; n < crossings.size(); ++n) {
        const auto isThere = [&](const Mark& mark) {
            constexpr double kSamePlace = 1;  // m
            return std::hypot((mark.place.easting - crossings[n].place.easting).value(),
                              (mark.place.northing - crossings[n].place.northing).value()) < kSamePlace;
        };
        if (crossings[n].confidence >= kSure && std::none_of(marks.begin(), marks.end(), isThere)) {
            list.push_back(n);
        }
    }
    const std::size_t step = (list.size() + marks.size()) / kMostMarks + 1;
    std::vector<std::size_t> some;
    for (std::size_t n = 0; n < list.size(); n += step) {
        some.push_back(list[n]);
    }
    return some;
}

}  // namespace

Result<FoundFit> fitWithCrossings(const GreyPicture& picture, std::span<const Mark> marks, std::optional<Kind> wish,
                                  const worker::IsStopped& isStopped) {
    // A model that is wished for may need more marks than there are yet.
    const auto first = fitMarks(marks);
    if (!first) {
        return tl::unexpected(first.error());
    }
    auto crossings = search(picture, soundMarks(marks, *first), first->model, isStopped);
    if (!crossings) {
        return tl::unexpected(crossings.error());
    }
    const auto more = besideMarks(*crossings, marks);
    std::vector<Mark> all(marks.begin(), marks.end());
    for (const std::size_t n : more) {
        all.push_back({(*crossings)[n].at, (*crossings)[n].place});
    }
    auto fit = fitMarks(all, wish);
    if (!fit) {
        return tl::unexpected(fit.error());
    }
    for (std::size_t n = 0; n < more.size(); ++n) {
        if (fit->residuals[marks.size() + n].isBlunder) {
            constexpr double kDoubtful = 0.3;
            double& confidence = (*crossings)[more[n]].confidence;
            confidence = std::min(confidence, kDoubtful);
        }
    }
    return FoundFit{std::move(*fit), std::move(*crossings)};
}

}  // namespace crosstick::registration
