#include "ui/tools/followed_pieces.h"

#include <algorithm>

#include "core/geodesy/plane_line.h"
#include "ui/tools/hit.h"

namespace crosstick::tools {

geodesy::PlanePoint FollowedPieces::startOf(std::size_t piece) const {
    return piece == 0 ? *start_ : pieces_[piece - 1].to;
}

FollowedPieces::Piece FollowedPieces::sought(geodesy::PlanePoint from, geodesy::PlanePoint to, Way way,
                                             const std::optional<terrain::Vein>& like) const {
    Piece piece{to, {from, to}, way, deeds_};
    if (way == Way::Printed) {
        piece.answer = std::make_shared<std::optional<Found>>();
        seek_(from, to, like, [answer = std::weak_ptr(piece.answer)](Found found) {
            if (const auto held = answer.lock()) {
                held->emplace(std::move(found));
            }
        });
    }
    return piece;
}

void FollowedPieces::goTo(geodesy::PlanePoint place, Way way) {
    ++deeds_;
    if (!start_) {
        start_ = place;
        return;
    }
    pieces_.push_back(
        sought(startOf(pieces_.size()), place, way, pieces_.empty() ? std::nullopt : pieces_.back().vein));
}

std::optional<std::size_t> FollowedPieces::pieceAt(geodesy::PlanePoint place, Metres reach) const {
    if (pieces_.empty() || apart(place, pieces_.back().to) <= reach ||
        apart(place, pieces_.back().line.back()) <= reach) {
        return std::nullopt;
    }
    std::optional<std::size_t> piece;
    Metres nearest = reach;
    for (std::size_t n = 0; n < pieces_.size(); ++n) {
        const auto on = geodesy::nearestOn(pieces_[n].line, geodesy::Ends::Open, place);
        if (on && on->away <= nearest) {
            piece = n;
            nearest = on->away;
        }
    }
    return piece && !pieces_[*piece].answer ? piece : std::nullopt;
}

void FollowedPieces::pull(std::size_t piece, geodesy::PlanePoint place, Way way) {
    ++deeds_;
    const auto was = std::make_shared<const Piece>(pieces_[piece]);
    const Way soIs = was->way == Way::Straight ? Way::Straight : way;
    Piece first = sought(startOf(piece), place, soIs, was->vein);
    Piece second = sought(place, was->to, soIs, was->vein);
    first.was = was;
    second.was = was;
    pieces_[piece] = std::move(first);
    pieces_.insert(pieces_.begin() + static_cast<std::ptrdiff_t>(piece) + 1, std::move(second));
}

/// A half may have been pulled itself meanwhile.
void FollowedPieces::undoPull(std::shared_ptr<const Piece> was) {
    const auto comesOf = [&](const Piece& piece) {
        const Piece* before = piece.was.get();
        while (before != nullptr && before != was.get()) {
            before = before->was.get();
        }
        return before != nullptr;
    };
    const auto first = std::find_if(pieces_.begin(), pieces_.end(), comesOf);
    const auto end = std::find_if_not(first, pieces_.end(), comesOf);
    *first = *was;
    pieces_.erase(first + 1, end);
}

void FollowedPieces::takeBack() {
    if (pieces_.empty()) {
        start_.reset();
        return;
    }
    const auto last = std::max_element(pieces_.begin(), pieces_.end(),
                                       [](const Piece& a, const Piece& b) { return a.deed < b.deed; });
    if (last->was) {
        undoPull(last->was);
    } else {
        pieces_.erase(last);
    }
}

void FollowedPieces::clear() {
    start_.reset();
    pieces_.clear();
}

bool FollowedPieces::isWaiting() const {
    return std::any_of(pieces_.begin(), pieces_.end(), [](const Piece& piece) { return piece.answer != nullptr; });
}

std::optional<Error> FollowedPieces::takeAnswers() {
    for (std::size_t n = 0; n < pieces_.size(); ++n) {
        Piece& piece = pieces_[n];
        if (!piece.answer || !*piece.answer) {
            continue;
        }
        Found& found = **piece.answer;
        if (!found) {
            Error why = found.error();
            if (piece.was) {
                undoPull(piece.was);
            } else {
                pieces_.erase(pieces_.begin() + static_cast<std::ptrdiff_t>(n),
                              pieces_.end());  // what follows hangs in the air
            }
            return why;
        }
        piece.line = std::move(found->line);
        piece.vein = found->vein;
        piece.answer.reset();
    }
    return std::nullopt;
}

plan::Points FollowedPieces::line() const {
    plan::Points line;
    for (const Piece& piece : pieces_) {
        line.insert(line.end(), piece.line.begin(), piece.line.end());
    }
    line.erase(std::unique(line.begin(), line.end()), line.end());
    if (line.empty() && start_) {
        line.push_back(*start_);
    }
    return line;
}

plan::Points FollowedPieces::pulledLine(std::size_t piece, geodesy::PlanePoint hand) const {
    plan::Points line;
    for (std::size_t n = 0; n < pieces_.size(); ++n) {
        const plan::Points pulled{startOf(n), hand, pieces_[n].to};
        const plan::Points& part = n == piece ? pulled : pieces_[n].line;
        line.insert(line.end(), part.begin(), part.end());
    }
    return line;
}

}  // namespace crosstick::tools
