#include "core/plan/history.h"

#include <algorithm>

#include "core/plan/difference.h"

namespace crosstick::plan {
namespace {

// What a step holds for itself: the things it put, and for every changed measure the chunk and its share of the chunk
// list that were copied for it. An estimate from sizes: exact counting would need an allocator of our own.
std::size_t ownBytes(const Difference& d, const Plan& plan) {
    std::size_t bytes = sizeof(Plan) + 64;
    for (const auto& change : d.measures) {
        if (change.after) {
            bytes += sizeof(Measure) + 64 + change.after->points.size() * sizeof(geodesy::PlanePoint);
        }
    }
    if (!d.measures.empty()) {
        const std::size_t chunksTouched = std::min(d.measures.size(), plan.measures().chunks().size());
        bytes += chunksTouched * ChunkedList<Measure>::kFresh * sizeof(MeasurePtr);
        bytes += plan.measures().chunks().size() * sizeof(ChunkedList<Measure>::ChunkPtr);
    }
    for (const auto& change : d.films) {
        if (change.after) {
            bytes += sizeof(Film) + 64 + change.after->shows.size() * sizeof(Showing);
        }
    }
    for (const auto& change : d.routes) {
        if (change.after) {
            bytes += sizeof(Route) + 64 + change.after->vertices.size() * sizeof(geodesy::PlanePoint) +
                     change.after->stops.size() * sizeof(Stop);
        }
    }
    bytes += d.sheets.size() * (sizeof(Sheet) + 64);
    bytes += d.heading.isNone() ? 0 : sizeof(Heading);
    return bytes;
}

}  // namespace

History::History(Plan start, std::size_t capBytes) : cap_(capBytes) {
    steps_.push_back({std::move(start), {}, 0});
}

const Plan& History::present() const {
    return steps_[position_].plan;
}

void History::push(Plan next, std::string caption) {
    const Difference change = difference(present(), next);
    if (change.isEmpty()) {
        return;
    }
    while (steps_.size() > position_ + 1) {
        bytes_ -= steps_.back().bytes;
        steps_.pop_back();
    }
    const std::size_t own = ownBytes(change, next) + caption.size();
    steps_.push_back({std::move(next), std::move(caption), own});
    bytes_ += own;
    ++position_;
    trim();
}

// The oldest state goes, so the next one becomes the start: it has no step that leads to it any more.
void History::trim() {
    while (bytes_ > cap_ && position_ > 0 && steps_.size() > 2) {
        steps_.pop_front();
        --position_;
        ++gone_;
        bytes_ -= steps_.front().bytes;
        steps_.front().bytes = 0;
        steps_.front().caption.clear();
    }
}

void History::rewrite(const std::function<Plan(const Plan&)>& anew) {
    for (Step& step : steps_) {
        step.plan = anew(step.plan);
    }
}

bool History::canUndo() const {
    return position_ > 0;
}
bool History::canRedo() const {
    return position_ + 1 < steps_.size();
}
std::string History::undoCaption() const {
    return canUndo() ? steps_[position_].caption : std::string{};
}
std::string History::redoCaption() const {
    return canRedo() ? steps_[position_ + 1].caption : std::string{};
}
const Plan& History::undo() {
    if (canUndo()) {
        --position_;
    }
    return present();
}
const Plan& History::redo() {
    if (canRedo()) {
        ++position_;
    }
    return present();
}
std::vector<std::string> History::captions() const {
    std::vector<std::string> captions;
    captions.reserve(steps());
    for (std::size_t n = 1; n < steps_.size(); ++n) {
        captions.push_back(steps_[n].caption);
    }
    return captions;
}
const Plan& History::goTo(std::size_t done) {
    position_ = std::min(done, steps());
    return present();
}
std::size_t History::steps() const {
    return steps_.size() - 1;
}
std::size_t History::bytes() const {
    return bytes_;
}

}  // namespace crosstick::plan
