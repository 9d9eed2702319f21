#include "core/terrain/vein.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace crosstick::terrain {
namespace {

constexpr double kWidestMm = 0.7;  // half of the widest line that is followed
constexpr double kFaintest = 24;   // steps of colour between a line and what lies beside it
constexpr double kClear = 60;      // contrast that leaves half a doubt
constexpr int kDirections = 12;
constexpr std::size_t kMost = 6;

/// Colours across a line, averaged along it.
struct Profile {
    std::vector<Colour> mean;    ///< from -reach to reach, in pixels
    std::vector<double> uneven;  ///< root mean square along the line
    int reach = 0;
    [[nodiscard]] std::size_t at(int across) const { return static_cast<std::size_t>(across + reach); }
};

std::optional<Colour> colourAt(const Patch& patch, double column, double row) {
    const int c = static_cast<int>(std::floor(column)) - patch.column;
    const int r = static_cast<int>(std::floor(row)) - patch.row;
    if (c < 0 || r < 0 || c >= patch.pixels.columns || r >= patch.pixels.rows) {
        return std::nullopt;
    }
    const auto index =
        static_cast<std::size_t>(r) * static_cast<std::size_t>(patch.pixels.columns) + static_cast<std::size_t>(c);
    const std::uint32_t rgb = patch.pixels.rgb[index];
    return rgb == 0 ? std::nullopt : std::optional(colourOf(rgb));
}

/// @param turn  direction of the line, radians from the columns towards the rows
std::optional<Profile> profileAt(const Patch& patch, PicturePoint at, double turn, PenSize size) {
    const double step = size.pixelsPerMm / 12;
    Profile profile;
    profile.reach = static_cast<int>(std::ceil(kWidestMm * size.pixelsPerMm)) + 3;
    profile.mean.reserve(profile.at(profile.reach) + 1);
    profile.uneven.reserve(profile.at(profile.reach) + 1);
    const double dx = std::cos(turn);
    const double dy = std::sin(turn);
    for (int u = -profile.reach; u <= profile.reach; ++u) {
        Colour sum{};
        double squares = 0;
        constexpr std::array kAlong{-3.0, -1.5, 0.0, 1.5, 3.0};
        for (const double along : kAlong) {
            const auto colour =
                colourAt(patch, at.column + dx * along * step - dy * u, at.row + dy * along * step + dx * u);
            if (!colour) {
                return std::nullopt;
            }
            for (std::size_t n = 0; n < 3; ++n) {
                sum[n] += (*colour)[n];
                squares += (*colour)[n] * (*colour)[n];
            }
        }
        constexpr double kCount = kAlong.size();
        double ofMean = 0;
        for (double& part : sum) {
            part /= kCount;
            ofMean += part * part;
        }
        profile.mean.push_back(sum);
        profile.uneven.push_back(std::sqrt(std::max(0.0, squares / kCount - ofMean)));
    }
    return profile;
}

Colour meanOver(const Profile& profile, int from, int to) {
    Colour mean{};
    for (int u = from; u <= to; ++u) {
        for (std::size_t n = 0; n < 3; ++n) {
            mean[n] += profile.mean[profile.at(u)][n] / (to - from + 1);
        }
    }
    return mean;
}

/// Beside a band, within three pixels of its edge, what differs most from it.
Colour besideBand(const Profile& profile, int edge, int way, const Colour& ink) {
    Colour other = profile.mean[profile.at(edge + way)];
    for (const int step : {2, 3}) {
        const Colour& colour = profile.mean[profile.at(edge + way * step)];
        other = colourDistance(colour, ink) > colourDistance(other, ink) ? colour : other;
    }
    return other;
}

/// How uneven the band is, along and across.
double unevenness(const Profile& profile, int inner, const Colour& ink) {
    double worst = 0;
    for (int u = -inner; u <= inner; ++u) {
        worst = std::max({worst, colourDistance(profile.mean[profile.at(u)], ink), profile.uneven[profile.at(u)]});
    }
    return worst;
}

/// The band of a profile's middle that stands out most from both sides; nothing where none does.
/// @return its doubt without that of the distance
std::optional<Vein> bandOf(const Profile& profile, PenSize size) {
    std::optional<Vein> best;
    const int widest = static_cast<int>(std::floor(kWidestMm * size.pixelsPerMm));
    for (int inner = 0; inner <= widest; ++inner) {  // pixels on each side of the middle one
        Vein vein;
        vein.ink = meanOver(profile, -inner, inner);
        vein.left = besideBand(profile, -inner, -1, vein.ink);
        vein.right = besideBand(profile, inner, 1, vein.ink);
        const double contrast = std::min(colourDistance(vein.ink, vein.left), colourDistance(vein.ink, vein.right));
        const double uneven = unevenness(profile, inner, vein.ink);
        if (contrast < kFaintest || uneven > 0.45 * contrast) {
            continue;
        }
        vein.halfWidth = inner + 0.75;
        vein.doubt = kClear / (contrast + kClear) + 0.6 * uneven / contrast;
        if (!best || vein.doubt < best->doubt) {
            best = vein;
        }
    }
    return best;
}

/// The distance in colour from which on something else is found round about, in steps of 8.
double somethingElse(const Patch& patch, const Vein& vein) {
    std::array<int, 56> shares{};
    int all = 0;
    for (const std::uint32_t rgb : patch.pixels.rgb) {
        if (rgb != 0) {
            ++shares[static_cast<std::size_t>(colourDistance(colourOf(rgb), vein.ink) / 8)];
            ++all;
        }
    }
    const double contrast = std::min(colourDistance(vein.ink, vein.left), colourDistance(vein.ink, vein.right));
    for (std::size_t n = 4; n + 1 < shares.size() && static_cast<double>(n) * 8 < contrast; ++n) {
        if (shares[n - 1] + shares[n] + shares[n + 1] > all * 0.08) {
            return static_cast<double>(n) * 8;
        }
    }
    return contrast;
}

/// The share of a patch that has about a colour: what covers much of it is the ground rather than a line.
double shareOf(const Patch& patch, const Colour& colour) {
    int like = 0;
    int all = 0;
    for (const std::uint32_t rgb : patch.pixels.rgb) {
        if (rgb != 0) {
            like += colourDistance(colourOf(rgb), colour) < 30 ? 1 : 0;
            ++all;
        }
    }
    return all == 0 ? 1 : static_cast<double>(like) / all;
}

bool alike(const Vein& a, const Vein& b) {
    return colourDistance(a.ink, b.ink) < 40 && std::abs(a.halfWidth - b.halfWidth) < 1.1;
}

/// The line's edges lie where the colour is half way to what lies beside it.
void measureWidth(const Profile& profile, Vein& vein) {
    const double contrast = std::min(colourDistance(vein.ink, vein.left), colourDistance(vein.ink, vein.right));
    double covered = 0;
    for (int u = -static_cast<int>(vein.halfWidth) - 2; u <= static_cast<int>(vein.halfWidth) + 2; ++u) {
        if (std::abs(u) <= profile.reach) {
            covered += std::clamp(1 - colourDistance(profile.mean[profile.at(u)], vein.ink) / contrast, 0.0, 1.0);
        }
    }
    vein.halfWidth = std::clamp(covered / 2, 0.6, vein.halfWidth + 1);
}

std::optional<Vein> veinAlong(const Patch& patch, PicturePoint at, int direction, PenSize size) {
    const double turn = direction * std::numbers::pi / kDirections;
    const auto profile = profileAt(patch, at, turn, size);
    auto vein = profile ? bandOf(*profile, size) : std::nullopt;
    if (vein) {
        measureWidth(*profile, *vein);
        vein->centre = at;
        vein->turn = turn;
    }
    return vein;
}

/// The same vein where it is clearest, close by: there its ink is learned.
Vein clearest(const Patch& patch, const Vein& vein, PenSize size) {
    std::optional<Vein> best;
    for (int row = -2; row <= 2; ++row) {
        for (int column = -2; column <= 2; ++column) {
            for (int n = 0; n < kDirections; ++n) {
                const auto other = veinAlong(patch, {vein.centre.column + column, vein.centre.row + row}, n, size);
                if (other && colourDistance(other->ink, vein.ink) < 70 &&
                    std::abs(other->halfWidth - vein.halfWidth) < 1.5 && (!best || other->doubt < best->doubt)) {
                    best = other;
                }
            }
        }
    }
    if (!best) {
        return vein;
    }
    best->doubt = vein.doubt;
    return *best;
}

}  // namespace

std::vector<Vein> veinsAt(const Patch& patch, PicturePoint place, PenSize size, PaperMm within) {
    std::vector<Vein> found;
    const double reach = within.value() * size.pixelsPerMm;
    const int around = static_cast<int>(std::ceil(reach));
    for (int row = -around; row <= around; ++row) {
        for (int column = -around; column <= around; ++column) {
            const double away = std::hypot(column, row);
            for (int n = 0; n < kDirections && away <= reach; ++n) {
                auto vein = veinAlong(patch, {place.column + column, place.row + row}, n, size);
                if (!vein) {
                    continue;
                }
                vein->doubt += 0.8 * away / reach;
                const auto same =
                    std::find_if(found.begin(), found.end(), [&](const Vein& other) { return alike(other, *vein); });
                if (same == found.end()) {
                    found.push_back(*vein);
                } else if (vein->doubt < same->doubt) {
                    *same = *vein;
                }
            }
        }
    }
    for (Vein& vein : found) {
        vein.doubt += 0.4 * std::clamp((shareOf(patch, vein.ink) - 0.25) / 0.25, 0.0, 1.0);
    }
    std::sort(found.begin(), found.end(), [](const Vein& a, const Vein& b) { return a.doubt < b.doubt; });
    found.resize(std::min(found.size(), kMost));
    std::vector<Vein> veins;
    for (const Vein& seen : found) {
        Vein vein = clearest(patch, seen, size);
        if (std::none_of(veins.begin(), veins.end(), [&](const Vein& other) { return alike(other, vein); })) {
            vein.likeNothing = somethingElse(patch, vein);
            veins.push_back(vein);
        }
    }
    return veins;
}

}  // namespace crosstick::terrain
