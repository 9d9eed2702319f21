#include "ui/press/route_card_strips.h"

#include <algorithm>

#include <fmt/format.h>

#include "ui/press/route_card_letters.h"
#include "ui/press/route_card_measures.h"
#include "ui/press/said.h"

namespace crosstick::press {
namespace {

/// Strips that stay together: a leg, or a part of one that no card could hold.
struct Bundle {
    std::vector<Strip> strips;
    double height = 0;
};

struct TieRows {
    std::vector<std::string> beside, below;
};

TieRows tieRows(const std::string& tie, const CardMeasures& m) {
    if (m.tieRows == 0) {
        return {{}, wrapped(tie, m.infoWidth, kInfoHand, 2)};
    }
    const auto whole = wrapped(tie, m.textWidth, kTieHand, 100);
    if (whole.size() <= m.tieRows) {
        return {whole, {}};
    }
    std::string rest;
    for (std::size_t n = m.tieRows; n < whole.size(); ++n) {
        rest += (rest.empty() ? "" : " ") + whole[n];
    }
    return {{whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(m.tieRows)},
            wrapped(rest, m.infoWidth, kInfoHand, 2)};
}

/// A leg's own figures in words, as many as the card has room for.
std::vector<std::string> partsOf(const movement::PaperLeg& leg, const CardMeasures& m) {
    const bool wide = m.gridAzimuthDrop > 0;
    std::vector<std::string> parts;
    if (wide) {
        parts = {said("leg %1 from %2", {std::to_string(leg.number), leg.from}),
                 said("map %1 m", {std::to_string(leg.metres)}),
                 said("ground %1 m", {std::to_string(leg.groundMetres)})};
    } else {
        parts = {said("leg %1: %2 m", {std::to_string(leg.number), std::to_string(leg.metres)})};
    }
    if (!leg.time.empty()) {
        parts.push_back(said("in %1", {leg.time}));
    }
    parts.push_back(leg.climb && leg.descent
                        ? said(leg.fromContours ? "climb %1, descent %2 m from contours" : "climb %1, descent %2 m",
                               {std::to_string(*leg.climb), std::to_string(*leg.descent)})
                        : said("climb unknown"));
    if (leg.steepest) {
        parts.push_back(said("steep %1 %", {std::to_string(*leg.steepest)}));
    }
    parts.push_back(leg.timeSoFar.empty()
                        ? said("so far %1 m", {std::to_string(leg.metresSoFar)})
                        : said("so far %1 m in %2", {std::to_string(leg.metresSoFar), leg.timeSoFar}));
    parts.insert(parts.end(), leg.notes.begin(), leg.notes.end());
    return parts;
}

/// Two rows of the tie stand beside the azimuth; what is left of it, and the leg's own figures, below it, where the
/// row has room up to the word "passed".
Strip endStrip(const movement::PaperLeg& leg, std::size_t at, const CardMeasures& m) {
    Strip strip{at, leg.pieces.size() - 1, true, {}, {}, 0};
    const TieRows tie = tieRows(leg.tie, m);
    strip.tie = tie.beside;
    strip.info = tie.below;
    for (std::string& row : packed(partsOf(leg, m), m.infoWidth, kInfoHand)) {
        strip.info.push_back(std::move(row));
    }
    strip.height = m.infoTop + m.infoStep * static_cast<double>(strip.info.size() - 1) + m.stripFoot;
    return strip;
}

std::vector<Strip> stripsOf(const movement::PaperLeg& leg, std::size_t at, const CardMeasures& m) {
    std::vector<Strip> strips;
    for (std::size_t piece = 0; piece + 1 < leg.pieces.size(); ++piece) {
        strips.push_back({at, piece, false, {}, {}, m.bendStrip});
    }
    strips.push_back(endStrip(leg, at, m));
    return strips;
}

/// What a bend needs under it where its card ends: among others its lowest row stands beside the next one's first.
double bendFoot(const CardMeasures& m) {
    return std::max(0.0, m.gridAzimuthDrop + m.stripFoot - m.bendStrip);
}

std::vector<Bundle> bundlesOf(const movement::PaperRoute& paper, const CardMeasures& m, double mostHeight) {
    std::vector<Bundle> bundles;
    for (std::size_t at = 0; at < paper.legs.size(); ++at) {
        bundles.emplace_back();
        for (Strip& strip : stripsOf(paper.legs[at], at, m)) {
            const double foot = strip.endsLeg ? 0 : bendFoot(m);
            if (!bundles.back().strips.empty() && bundles.back().height + strip.height + foot > mostHeight) {
                bundles.back().strips.back().height += bendFoot(m);
                bundles.back().height += bendFoot(m);
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

/// Fills card after card, leaving so much height free on those that another follows.
Cards filled(const std::vector<Bundle>& bundles, std::size_t legs, CardRoom room, double free) {
    Cards cards;
    const auto most = [&](double first, double later) { return cards.bundles.size() == 1 ? first : later; };
    for (std::size_t n = 0; n < bundles.size(); ++n) {
        if (cards.bundles.empty() || cards.bundles.back().size() == legs ||
            cards.heights.back() + bundles[n].height > most(room.first, room.onward) - free) {
            cards.bundles.emplace_back();
            cards.heights.push_back(0);
        }
        cards.bundles.back().push_back(n);
        cards.heights.back() += bundles[n].height;
    }
    if (!cards.bundles.empty() && cards.heights.back() > most(room.firstAndLast, room.last) &&
        cards.bundles.back().size() > 1) {
        const std::size_t moved = cards.bundles.back().back();
        cards.bundles.back().pop_back();
        cards.heights.back() -= bundles[moved].height;
        cards.bundles.push_back({moved});
        cards.heights.push_back(bundles[moved].height);
    }
    return cards;
}

}  // namespace

std::vector<CardStrips> shareOut(const movement::PaperRoute& paper, const CardMeasures& measures, CardRoom room) {
    const double least = std::min({room.first, room.onward, room.firstAndLast, room.last});
    const std::vector<Bundle> bundles = bundlesOf(paper, measures, least);
    Cards best = filled(bundles, measures.legs, room, 0);
    const std::size_t count = best.bundles.size();
    for (int less = 1; less < room.onward; ++less) {
        Cards next = filled(bundles, measures.legs, room, less);
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
