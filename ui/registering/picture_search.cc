#include "ui/registering/picture_search.h"

#include <algorithm>

#include <QPointer>

#include "core/registration/printed_cross.h"
#include "core/registration/snap.h"

namespace crosstick::registering {
namespace {

using registration::PixelPoint;
using work::Course;
using work::GivingUp;
using work::Lane;

constexpr double kProposedReach = 14;  // pixels of the picture round a proposal
constexpr double kCrossReach = 12;     // pixels: small crosses are many things where more of the picture is looked at

}  // namespace

PictureSearch::PictureSearch(work::Errands& errands, QObject* parent) : QObject(parent), errands_(errands) {}

void PictureSearch::begin() {
    ++round_;
    copy_.clear();
    searches_ = false;
}

void PictureSearch::setSearching(bool searches) {
    searches_ = searches;
    Q_EMIT changed();
}

template <class Make, class Then>
void PictureSearch::run(const QString& words, Make make, Then then) {
    const QPointer<PictureSearch> self(this);
    errands_.run(
        Lane::Makings, words, GivingUp::Allowed,
        [copy = copy_, make = std::move(make)](Course& course) {
            return sheets::Raster::open(copy).and_then(
                [&](const sheets::Raster& raster) { return make(registration::greyOf(raster), course); });
        },
        [self, round = round_, then = std::move(then)](auto&& answer) {
            if (self && round == self->round_) {
                then(std::forward<decltype(answer)>(answer));
            }
        },
        [self, round = round_] {
            if (self && round == self->round_) {
                self->setSearching(false);
            }
        });
}

void PictureSearch::crossingAt(const registration::CrossSight& sight, double reach,
                               std::function<void(PixelPoint)> then) {
    run(
        tr("Looking for the crossing"),
        [sight, reach](const registration::GreyPicture& picture, Course&) {
            auto found = registration::crossingNear(picture, sight, reach);
            return found && !*found ? registration::crossNear(picture, sight, std::min(reach, kCrossReach)) : found;
        },
        [then = std::move(then)](const Result<std::optional<PixelPoint>>& found) {
            if (found && *found) {
                then(**found);
            }
        });
}

void PictureSearch::next(Candidates candidates, std::function<void(std::optional<Next>)> then) {
    setSearching(true);
    run(
        tr("Looking for the next crossing"),
        [candidates = std::move(candidates)](const registration::GreyPicture& picture,
                                             Course& course) -> Result<std::optional<Next>> {
            for (std::size_t n = 0; n < candidates.size() && !course.isStopped(); ++n) {
                const auto found = registration::crossingNear(picture, candidates[n].second, kProposedReach);
                if (found && *found) {
                    Next seen{n, candidates[n].first};
                    seen.proposal.at = **found;
                    return std::optional(seen);
                }
            }
            return std::optional<Next>();
        },
        [this, then = std::move(then)](const Result<std::optional<Next>>& found) {
            searches_ = false;
            then(found ? *found : std::nullopt);
        });
}

void PictureSearch::all(std::vector<registration::Mark> marks,
                        std::function<void(Result<registration::FoundFit>)> then) {
    setSearching(true);
    run(
        tr("Looking for the grid's crossings"),
        [marks = std::move(marks)](const registration::GreyPicture& picture, Course& course) {
            return registration::fitWithCrossings(picture, marks, std::nullopt,
                                                  [&course] { return course.isStopped(); });
        },
        [this, then = std::move(then)](Result<registration::FoundFit> found) {
            searches_ = false;
            then(std::move(found));
        });
}

}  // namespace crosstick::registering
