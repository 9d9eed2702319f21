#include "ui/press/route_card_strips.h"

#include <algorithm>

#include <fmt/format.h>

#include "ui/press/route_card_letters.h"
#include "ui/press/route_card_measures.h"

namespace crosstick::press {
namespace {

constexpr std::size_t kLegsACard = 5;

/// Strips that stay together: a leg, or a part of one that no card could hold.
struct Bundle {
    std::vector<Strip> strips;
    double height = 0;
};

Strip endStrip(const movement::PaperLeg& leg, std::size_t at) {
    Strip strip{at, leg.pieces.size() - 1, true, {}, {}, 0};
    strip.tie = wrapped(leg.tie, kTextWidth, kTieHand, 2);
    std::vector<std::string> parts{fmt::format("leg {} from {}", leg.number, leg.from),
                                   fmt::format("map {} m", leg.metres), fmt::format("ground {} m", leg.groundMetres)};
    if (!leg.time.empty()) {
        parts.push_back(leg.time + " on the move");
    }
    if (leg.climb && leg.descent) {
        parts.push_back(fmt::format("climb {} m", *leg.climb));
        parts.push_back(fmt::format("descent {} m", *leg.descent));
    } else {
        parts.emplace_back("climb unknown");
    }
    strip.info = packed(parts, kTextWidth, kInfoHand);
    strip.info.push_back(fitted(fmt::format("so far {} m, ground {} m{}", leg.metresSoFar, leg.groundMetresSoFar,
                                            leg.timeSoFar.empty() ? "" : ", " + leg.timeSoFar),
                                kTextWidth, kInfoHand));
    const double rows = kLabelDrop + kTieStep * static_cast<double>(strip.tie.size()) +
                        kInfoStep * static_cast<double>(strip.info.size()) + kStripFoot;
    strip.height = std::max(rows, kLeastEndStrip);
    return strip;
}

std::vector<Strip> stripsOf(const movement::PaperLeg& leg, std::size_t at) {
    std::vector<Strip> strips;
    for (std::size_t piece = 0; piece + 1 < leg.pieces.size(); ++piece) {
        strips.push_back({at, piece, false, {}, {}, kBendStrip});
    }
    strips.push_back(endStrip(leg, at));
    return strips;
}

std::vector<Bundle> bundlesOf(const movement::PaperRoute& paper, double mostHeight) {
    std::vector<Bundle> bundles;
    for (std::size_t at = 0; at < paper.legs.size(); ++at) {
        bundles.emplace_back();
        for (Strip& strip : stripsOf(paper.legs[at], at)) {
            if (!bundles.back().strips.empty() && bundles.back().height + strip.height > mostHeight) {
                bundles.emplace_back();
            }
            bundles.back().height += strip.height;
            bundles.back().strips.push_back(std::move(strip));
        }
    }
    return bundles;
}

struct Cards {
    std::vector<std::vector<std::size_t>> bundles;
    std::vector<double> heights;
};

/// Fills card after card up to a height.
Cards filled(const std::vector<Bundle>& bundles, double upTo, double lastRoom) {
    Cards cards;
    for (std::size_t n = 0; n < bundles.size(); ++n) {
        if (cards.bundles.empty() || cards.bundles.back().size() == kLegsACard ||
            cards.heights.back() + bundles[n].height > upTo) {
            cards.bundles.emplace_back();
            cards.heights.push_back(0);
        }
        cards.bundles.back().push_back(n);
        cards.heights.back() += bundles[n].height;
    }
    if (!cards.bundles.empty() && cards.heights.back() > lastRoom && cards.bundles.back().size() > 1) {
        const std::size_t moved = cards.bundles.back().back();
        cards.bundles.back().pop_back();
        cards.heights.back() -= bundles[moved].height;
        cards.bundles.push_back({moved});
        cards.heights.push_back(bundles[moved].height);
    }
    return cards;
}

}  // namespace

std::vector<CardStrips> shareOut(const movement::PaperRoute& paper, CardRoom room) {
    const std::vector<Bundle> bundles = bundlesOf(paper, std::min(room.onward, room.last));
    Cards best = filled(bundles, room.onward, room.last);
    const std::size_t count = best.bundles.size();
    for (double upTo = room.onward - 1; upTo > 0; upTo -= 1) {
        Cards next = filled(bundles, upTo, room.last);
        if (next.bundles.size() > count) {
            break;
        }
        best = std::move(next);
    }
    std::vector<CardStrips> cards;
    for (const auto& chosen : best.bundles) {
        cards.emplace_back();
        for (const std::size_t bundle : chosen) {
            cards.back().strips.insert(cards.back().strips.end(), bundles[bundle].strips.begin(),
                                       bundles[bundle].strips.end());
        }
    }
    return cards;
}

}  // namespace crosstick::press
