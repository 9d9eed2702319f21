#include "core/registration/fit.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/registration/faults.h"
#include "core/registration/least_squares.h"

namespace crosstick::registration {
namespace {

constexpr double kFinestReading = 0.1;  // pixels, our own: no hand and no finder reads a printed line closer
constexpr double kSmallestSlip = 0.3;   // pixels, our own: about a pixel off is a reading, however fine the others are
constexpr double kChance = 0.001;       // of calling a sound mark a blunder, our own: one set in a thousand
constexpr std::size_t kSuspects = 12;   // among which two that hide each other are looked for, our own
constexpr std::size_t kMostForPairs = 40;  // among more than these two draw no fit to them, our own
constexpr int kSpareToChoose = 4;          // observations over the parameters

struct Chosen {
    Solved solved;
    Choice choice = Choice::Clear;
    std::vector<Candidate> candidates;
    std::optional<Candidate> runnerUp;
};

double observations(std::size_t marks) {
    return 2 * static_cast<double>(marks);
}

std::optional<double> criterion(const Solved& solved) {
    const double n = observations(solved.misfits.size());
    const int p = parametersOf(solved.model.kind());
    if (n < p + kSpareToChoose) {
        return std::nullopt;
    }
    return n * std::log(std::max(solved.squares / n, kFinestReading * kFinestReading)) + p * std::log(n);
}

Candidate candidateOf(const Solved& solved) {
    const double marks = static_cast<double>(solved.misfits.size());
    return {solved.model.kind(), std::sqrt(solved.squares / marks), criterion(solved)};
}

/// The least criterion, or the smaller model that comes near it. None where no candidate has one.
std::optional<std::size_t> best(const std::vector<Candidate>& candidates) {
    std::optional<std::size_t> least;
    for (std::size_t n = 0; n < candidates.size(); ++n) {
        if (candidates[n].bic && (!least || *candidates[n].bic < *candidates[*least].bic)) {
            least = n;
        }
    }
    for (std::size_t n = 0; least && n < *least; ++n) {  // simplest first
        if (candidates[n].bic && *candidates[n].bic < *candidates[*least].bic + kClear) {
            return n;
        }
    }
    return least;
}

std::optional<Candidate> nextAfter(const std::vector<Candidate>& candidates, std::size_t taken) {
    std::optional<Candidate> next;
    for (std::size_t n = 0; n < candidates.size(); ++n) {
        if (n != taken && candidates[n].bic && (!next || *candidates[n].bic < *next->bic)) {
            next = candidates[n];
        }
    }
    return next;
}

/// All models that the marks determine. With none: why the simplest is not.
Result<std::vector<Solved>> allModels(std::span<const Mark> marks) {
    std::vector<Solved> all;
    std::optional<Error> why;
    for (const Kind kind : kKinds) {
        if (auto solved = solve(kind, marks)) {
            all.push_back(std::move(*solved));
        } else if (!why) {
            why = solved.error();
        }
    }
    return all.empty() ? Result<std::vector<Solved>>(tl::unexpected(*why)) : all;
}

Result<Chosen> choose(std::span<const Mark> marks, std::optional<Kind> wish) {
    auto all = allModels(marks);
    if (!all) {
        return tl::unexpected(all.error());
    }
    std::vector<Candidate> candidates;
    for (const Solved& solved : *all) {
        candidates.push_back(candidateOf(solved));
    }
    const auto byCriterion = best(candidates);
    std::size_t taken = byCriterion.value_or(0);
    Choice choice = byCriterion ? Choice::Clear : Choice::TooFew;
    if (wish) {
        const auto wished =
            std::find_if(candidates.begin(), candidates.end(), [&](const Candidate& c) { return c.kind == *wish; });
        if (wished == candidates.end()) {
            return tl::unexpected(solve(*wish, marks).error());
        }
        taken = static_cast<std::size_t>(wished - candidates.begin());
        choice = Choice::Wished;
    }
    const auto next = nextAfter(candidates, taken);
    if (choice == Choice::Clear && next && std::abs(*next->bic - *candidates[taken].bic) < kClear) {
        choice = Choice::CannotTell;
    }
    return Chosen{std::move((*all)[taken]), choice, std::move(candidates), next};
}

/// The chance that the squares fall by so much when one mark or two are left out: that of F with 2 or 4 degrees of
/// freedom above and `below`, for which its integral (Abramowitz and Stegun 26.6.2, from memory) is in closed form.
double chanceOf(double gain, double variance, double below, std::size_t leftOut) {
    const double x = below / (below + gain / variance);
    const double half = below / 2;
    return std::pow(x, half) * (leftOut == 1 ? 1 : 1 + half * (1 - x));
}

/// Is a fall of the squares by `gain` when one or two of so many marks are left out no work of chance? Shared among all
/// that might have been left out (Bonferroni).
bool isNoChance(double gain, double squaresLeft, double freedomLeft, std::size_t marks, std::size_t leftOut) {
    if (freedomLeft < 1) {
        return false;
    }
    const double variance = std::max(squaresLeft / freedomLeft, kSmallestSlip * kSmallestSlip);
    const auto count = static_cast<double>(marks);
    const double ways = leftOut == 1 ? count : count * (count - 1) / 2;
    return chanceOf(gain, variance, freedomLeft, leftOut) * ways < kChance;
}

/// The fit while marks are dropped from it and taken back.
struct Sieve {
    std::span<const Mark> marks;
    std::optional<Kind> wish;
    std::vector<std::size_t> kept;
    std::vector<std::size_t> dropped;

    [[nodiscard]] std::vector<Mark> keptMarks() const {
        std::vector<Mark> some;
        std::transform(kept.begin(), kept.end(), std::back_inserter(some), [&](std::size_t n) { return marks[n]; });
        return some;
    }
    [[nodiscard]] double freedom(const Chosen& chosen) const {
        return observations(kept.size()) - parametersOf(chosen.solved.model.kind());
    }
    /// Drops the worst mark if it is a blunder.
    bool drop(const Chosen& chosen) {
        const auto& misfits = chosen.solved.misfits;
        const auto worst = std::max_element(misfits.begin(), misfits.end(),
                                            [](const Misfit& a, const Misfit& b) { return a.gain < b.gain; });
        const double left = std::max(0.0, chosen.solved.squares - worst->gain);
        if (!isNoChance(worst->gain, left, freedom(chosen) - 2, kept.size(), 1)) {
            return false;
        }
        dropAt(static_cast<std::size_t>(worst - misfits.begin()));
        return true;
    }
    void dropAt(std::size_t place) {
        dropped.push_back(kept[place]);
        kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(place));
    }
    /// Two of the kept, and the squares that a model leaves without them.
    struct Pair {
        std::size_t first = 0, second = 0;
        double squares = 0;
    };
    /// Drops two marks that hide each other, where neither alone is a blunder: two near one another that are wrong by
    /// the same draw the fit to them, or make it look bent. So it is asked of every model up to the one that was
    /// chosen, and one is believed that then fits no worse than that.
    bool dropPair(const Chosen& chosen) {
        if (kept.size() > kMostForPairs) {
            return false;
        }
        const auto all = keptMarks();
        const double fitsTo = chosen.solved.squares / freedom(chosen);
        for (const Kind kind : kKinds) {
            const int parameters = parametersOf(kind);
            if (parameters > parametersOf(chosen.solved.model.kind()) || (wish && kind != *wish)) {
                continue;
            }
            const auto solved = solve(kind, all);
            const auto pair = solved ? worstPair(*solved, all) : std::nullopt;
            const double freedomLeft = observations(all.size()) - parameters - 4;
            if (pair && pair->squares <= fitsTo * freedomLeft &&
                isNoChance(solved->squares - pair->squares, pair->squares, freedomLeft, all.size(), 2)) {
                dropAt(pair->second);
                dropAt(pair->first);
                return true;
            }
        }
        return false;
    }
    /// Of the marks whose leaving out improves a model most, the two without which it is best.
    [[nodiscard]] static std::optional<Pair> worstPair(const Solved& solved, const std::vector<Mark>& all) {
        std::vector<std::size_t> places(all.size());
        std::iota(places.begin(), places.end(), std::size_t{0});
        std::sort(places.begin(), places.end(),
                  [&](std::size_t a, std::size_t b) { return solved.misfits[a].gain > solved.misfits[b].gain; });
        places.resize(std::min(kSuspects, places.size()));
        std::optional<Pair> worst;
        for (std::size_t a = 0; a < places.size(); ++a) {
            for (std::size_t b = 0; b < a; ++b) {
                const auto [low, high] = std::minmax(places[a], places[b]);
                auto others = all;
                others.erase(others.begin() + static_cast<std::ptrdiff_t>(high));
                others.erase(others.begin() + static_cast<std::ptrdiff_t>(low));
                const auto without = solve(solved.model.kind(), others);
                if (without && (!worst || without->squares < worst->squares)) {
                    worst = Pair{low, high, without->squares};
                }
            }
        }
        return worst;
    }
    /// Takes back the dropped mark that the model comes nearest to, if it is none now.
    bool takeBack(const Chosen& chosen) {
        const auto some = keptMarks();
        std::optional<std::size_t> mildest;
        double least = 0;
        for (std::size_t n = 0; n < dropped.size(); ++n) {
            const Misfit misfit = misfitOf(chosen.solved.model, some, marks[dropped[n]]);
            const double gain = std::pow(std::hypot(misfit.pixels.x, misfit.pixels.y), 2) / (1 + misfit.spread);
            if (!isNoChance(gain, chosen.solved.squares, freedom(chosen), kept.size() + 1, 1) &&
                (!mildest || gain < least)) {
                mildest = n;
                least = gain;
            }
        }
        if (!mildest) {
            return false;
        }
        const auto at = dropped.begin() + static_cast<std::ptrdiff_t>(*mildest);
        kept.insert(std::upper_bound(kept.begin(), kept.end(), *at), *at);
        dropped.erase(at);
        return true;
    }
};

Result<Chosen> sieved(Sieve& sieve) {
    auto chosen = choose(sieve.keptMarks(), sieve.wish);
    const std::size_t most = sieve.marks.size() / 4;
    const auto mayDrop = [&](std::size_t more) { return chosen && sieve.dropped.size() + more <= most; };
    while ((mayDrop(1) && sieve.drop(*chosen)) || (mayDrop(2) && sieve.dropPair(*chosen))) {
        chosen = choose(sieve.keptMarks(), sieve.wish);
    }
    while (chosen && !sieve.dropped.empty() && sieve.takeBack(*chosen)) {
        chosen = choose(sieve.keptMarks(), sieve.wish);
    }
    return chosen;
}

Result<void> apart(std::span<const Mark> marks) {
    for (std::size_t n = 0; n < marks.size(); ++n) {
        for (std::size_t k = 0; k < n; ++k) {
            if (marks[n].at == marks[k].at || marks[n].place == marks[k].place) {
                return fail(kSamePlace, {{"first", static_cast<std::int64_t>(k + 1)},
                                         {"second", static_cast<std::int64_t>(n + 1)}});
            }
        }
    }
    return {};
}

Residual residualOf(const Model& model, const Mark& mark) {
    const auto place = model.place(mark.at).value_or(mark.place);
    const Metres east = mark.place.easting - place.easting;
    const Metres north = mark.place.northing - place.northing;
    // The mark's place lies where its pixel would have to be: the pixel less that, so that both arrows point alike.
    return {model.stepAt(mark.at).pixels(east, north), east, north};
}

void measure(Fit& fit, const Sieve& sieve, const Chosen& chosen) {
    double pixels = 0;
    double ground = 0;
    double without = 0;
    double groundWithout = 0;
    for (std::size_t n = 0; n < sieve.kept.size(); ++n) {
        const Residual& residual = fit.residuals[sieve.kept[n]];
        const PixelPoint out = chosen.solved.misfits[n].ifLeftOut;
        const double perPixel = chosen.solved.model.stepAt(sieve.marks[sieve.kept[n]].at).metres();
        pixels += std::pow(residual.size(), 2);
        ground += std::pow(residual.ground().value(), 2);
        without += out.x * out.x + out.y * out.y;
        groundWithout += (out.x * out.x + out.y * out.y) * perPixel * perPixel;
    }
    const double count = static_cast<double>(sieve.kept.size());
    fit.rmsPixels = std::sqrt(pixels / count);
    fit.rmsGround = Metres(std::sqrt(ground / count));
    if (std::isfinite(without)) {
        fit.leaveOneOutPixels = std::sqrt(without / count);
        fit.leaveOneOut = Metres(std::sqrt(groundWithout / count));
    }
    fit.spare = static_cast<int>(sieve.freedom(chosen));
}

}  // namespace

double Residual::size() const {
    return std::hypot(pixels.x, pixels.y);
}

Metres Residual::ground() const {
    return Metres(std::hypot(east.value(), north.value()));
}

Result<Fit> fitMarks(std::span<const Mark> marks, std::optional<Kind> wish) {
    if (marks.size() > kMostMarks) {
        return fail(kTooManyMarks, {{"marks", static_cast<std::int64_t>(marks.size())},
                                    {"most", static_cast<std::int64_t>(kMostMarks)}});
    }
    if (auto good = apart(marks); !good) {
        return tl::unexpected(good.error());
    }
    Sieve sieve{marks, wish, {}, {}};
    for (std::size_t n = 0; n < marks.size(); ++n) {
        sieve.kept.push_back(n);
    }
    auto chosen = sieved(sieve);
    if (!chosen) {
        return tl::unexpected(chosen.error());
    }
    Fit fit{chosen->solved.model, {}, 0, {}, {}, {}, chosen->candidates, chosen->choice, chosen->runnerUp, 0};
    for (const Mark& mark : marks) {
        fit.residuals.push_back(residualOf(fit.model, mark));
    }
    for (const std::size_t n : sieve.dropped) {
        fit.residuals[n].isBlunder = true;
    }
    measure(fit, sieve, *chosen);
    return fit;
}

}  // namespace crosstick::registration
