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

struct TieRows {
    std::vector<std::string> beside, below;
};

TieRows tieRows(const std::string& tie) {
    TieRows rows{wrapped(tie, kTextWidth, kTieHand, 2), {}};
    if (wrapped(tie, kTextWidth, kTieHand, 3).size() < 3) {
        return rows;
    }
    const auto whole = wrapped(tie, kTextWidth, kTieHand, 100);
    std::string rest;
    for (std::size_t n = 2; n < whole.size(); ++n) {
        rest += (n == 2 ? "" : " ") + whole[n];
    }
    rows.beside = {whole[0], whole[1]};
    rows.below = wrapped(rest, kInfoWidth, kInfoHand, 2);
    return rows;
}

/// Two rows of the tie stand beside the azimuth; what is left of it, and the leg's own figures, below it, where the
/// row has room up to the word "passed".
Strip endStrip(const movement::PaperLeg& leg, std::size_t at) {
    Strip strip{at, leg.pieces.size() - 1, true, {}, {}, 0};
    const TieRows tie = tieRows(leg.tie);
    strip.tie = tie.beside;
    strip.info = tie.below;
    std::vector<std::string> parts{fmt::format("leg {} from {}", leg.number, leg.from),
                                   fmt::format("map {} m", leg.metres), fmt::format("ground {} m", leg.groundMetres)};
    if (!leg.time.empty()) {
        parts.push_back("in " + leg.time);
    }
    parts.push_back(leg.climb && leg.descent ? fmt::format("climb {}, descent {} m", *leg.climb, *leg.descent)
                                             : "climb unknown");
    if (leg.steepest) {
        parts.push_back(fmt::format("steep {} %", *leg.steepest));
    }
    parts.push_back(fmt::format("so far {} m{}", leg.metresSoFar, leg.timeSoFar.empty() ? "" : " in " + leg.timeSoFar));
    parts.insert(parts.end(), leg.notes.begin(), leg.notes.end());
    for (std::string& row : packed(parts, kInfoWidth, kInfoHand)) {
        strip.info.push_back(std::move(row));
    }
    strip.height = kInfoTop + kInfoStep * static_cast<double>(strip.info.size() - 1) + kStripFoot;
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
    for (int less = 1; less < room.onward; ++less) {
        Cards next = filled(bundles, room.onward - less, room.last);
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
