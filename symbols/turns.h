#pragma once

#include "symbols/signs.h"

namespace crosstick::symbols {

/// One shown thing with the rule that it is engraved by.
struct Sorted {
    Subject* subject;
    const SignRule* rule;  ///< null: a route
    [[nodiscard]] bool isRoute() const { return rule == nullptr; }
    [[nodiscard]] bool isRing() const { return rule != nullptr && rule->body == Body::Ring; }
    [[nodiscard]] bool isLine() const {
        return rule == nullptr || rule->body == Body::Line || rule->body == Body::Ring;
    }
    /// The line along which its ink runs.
    [[nodiscard]] Points along() const {
        return rule != nullptr && rule->along != nullptr ? rule->along(subject->points) : subject->points;
    }
};

[[nodiscard]] Turn turnOf(const Sorted& one);

/// Places symbols and letters of a film whose ink is noted. What a hand placed comes first; then, turn by turn, what
/// can stand where it would stand alone, since nobody else wants to stand there; then those that want the same place,
/// by their order. So whoever has to give way never pushes out one that stood well, and what moves in one corner of a
/// film does not push letters on through all of it.
void placeInTurn(Desk& desk, const std::vector<Sorted>& sorted, const std::vector<Subject*>& routes);

}  // namespace crosstick::symbols
