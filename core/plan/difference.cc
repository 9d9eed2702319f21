#include "core/plan/difference.h"

#include <unordered_map>

namespace crosstick::plan {
namespace {

template <class T>
Change<T> changeOf(const std::shared_ptr<const T>& before, const std::shared_ptr<const T>& after) {
    return before == after || *before == *after ? Change<T>{} : Change<T>{before, after};
}

template <class T>
std::shared_ptr<const Order> orderOf(const std::vector<std::shared_ptr<const T>>& list) {
    auto order = std::make_shared<Order>();
    order->reserve(list.size());
    for (const auto& value : list) {
        order->push_back(value->id);
    }
    return order;
}

template <class T>
using List = std::vector<std::shared_ptr<const T>>;

/// Lists in an order of their own: matched by identity, reported in the order of `after`, the removed ones last.
template <class T>
std::vector<Change<T>> listChanges(const List<T>& before, const List<T>& after) {
    std::unordered_map<Uuid, std::shared_ptr<const T>> old;
    for (const auto& value : before) {
        old.emplace(value->id, value);
    }
    std::vector<Change<T>> changes;
    for (const auto& value : after) {
        const auto was = old.find(value->id);
        if (was == old.end()) {
            changes.push_back({nullptr, value});
            continue;
        }
        if (was->second != value && !(*was->second == *value)) {
            changes.push_back({was->second, value});
        }
        old.erase(was);
    }
    for (const auto& value : before) {
        if (old.contains(value->id)) {
            changes.push_back({value, nullptr});
        }
    }
    return changes;
}

using Chunks = std::vector<ChunkedList<Measure>::ChunkPtr>;

/// Walks the measures of a list, able to step over a whole chunk.
class ChunkWalk {
  public:
    explicit ChunkWalk(const Chunks& chunks) : chunks_(chunks) {}
    [[nodiscard]] bool atEnd() const { return chunk_ == chunks_.size(); }
    [[nodiscard]] const MeasurePtr& value() const { return (*chunks_[chunk_])[at_]; }
    [[nodiscard]] bool atChunkStart() const { return at_ == 0; }
    [[nodiscard]] const void* chunk() const { return chunks_[chunk_].get(); }
    void stepChunk() {
        ++chunk_;
        at_ = 0;
    }
    void step() {
        if (++at_ == chunks_[chunk_]->size()) {
            stepChunk();
        }
    }

  private:
    const Chunks& chunks_;
    std::size_t chunk_ = 0;
    std::size_t at_ = 0;
};

// Both lists are sorted by identity, so this is a merge; a chunk that both share is stepped over whole, which is what
// makes the cost that of the change.
std::vector<Change<Measure>> measureChanges(const ChunkedList<Measure>& before, const ChunkedList<Measure>& after) {
    std::vector<Change<Measure>> changes;
    if (&before.chunks() == &after.chunks()) {
        return changes;
    }
    ChunkWalk old(before.chunks());
    ChunkWalk now(after.chunks());
    while (!old.atEnd() || !now.atEnd()) {
        if (!old.atEnd() && !now.atEnd() && old.atChunkStart() && now.atChunkStart() && old.chunk() == now.chunk()) {
            old.stepChunk();
            now.stepChunk();
        } else if (now.atEnd() || (!old.atEnd() && old.value()->id < now.value()->id)) {
            changes.push_back({old.value(), nullptr});
            old.step();
        } else if (old.atEnd() || now.value()->id < old.value()->id) {
            changes.push_back({nullptr, now.value()});
            now.step();
        } else {
            if (old.value() != now.value() && !(*old.value() == *now.value())) {
                changes.push_back({old.value(), now.value()});
            }
            old.step();
            now.step();
        }
    }
    return changes;
}

}  // namespace

bool Difference::isEmpty() const {
    return !identity && heading.isNone() && phases.isNone() && registration.isNone() && force.isNone() &&
           sheetOrder.isNone() && filmOrder.isNone() && routeOrder.isNone() && sheets.empty() && films.empty() &&
           routes.empty() && measures.empty();
}

Difference difference(const Plan& before, const Plan& after) {
    Difference d;
    if (before.id_ != after.id_) {
        d.identity = std::pair(before.id_, after.id_);
    }
    d.heading = changeOf(before.heading_, after.heading_);
    d.phases = changeOf(before.phases_, after.phases_);
    d.registration = changeOf(before.registration_, after.registration_);
    d.force = changeOf(before.force_, after.force_);
    if (before.sheets_ != after.sheets_) {
        d.sheets = listChanges(*before.sheets_, *after.sheets_);
        d.sheetOrder = changeOf(orderOf(*before.sheets_), orderOf(*after.sheets_));
    }
    if (before.films_ != after.films_) {
        d.films = listChanges(*before.films_, *after.films_);
        d.filmOrder = changeOf(orderOf(*before.films_), orderOf(*after.films_));
    }
    if (before.routes_ != after.routes_) {
        d.routes = listChanges(*before.routes_, *after.routes_);
        d.routeOrder = changeOf(orderOf(*before.routes_), orderOf(*after.routes_));
    }
    d.measures = measureChanges(before.measures_, after.measures_);
    return d;
}

Plan apply(const Plan& before, const Difference& difference) {
    PlanBuilder builder(before);
    if (difference.identity) {
        builder.id(difference.identity->second);
    }
    if (difference.heading.after) {
        builder.heading(*difference.heading.after);
    }
    if (difference.phases.after) {
        builder.phases(*difference.phases.after);
    }
    if (difference.registration.after) {
        builder.registration(*difference.registration.after);
    }
    if (difference.force.after) {
        builder.force(*difference.force.after);
    }
    for (const auto& change : difference.sheets) {
        change.after ? builder.put(*change.after) : builder.removeSheet(change.before->id);
    }
    for (const auto& change : difference.films) {
        change.after ? builder.put(*change.after) : builder.removeFilm(change.before->id);
    }
    for (const auto& change : difference.routes) {
        change.after ? builder.put(*change.after) : builder.removeRoute(change.before->id);
    }
    std::vector<Measure> put;
    for (const auto& change : difference.measures) {
        if (change.after) {
            put.push_back(*change.after);
        } else {
            builder.removeMeasure(change.before->id);
        }
    }
    if (put.size() == 1) {
        builder.put(std::move(put.front()));
    } else if (!put.empty()) {
        builder.put(std::move(put));
    }
    const auto orderIn = [](const Change<Order>& change) { return change.after ? *change.after : Order{}; };
    builder.order(orderIn(difference.sheetOrder), orderIn(difference.filmOrder), orderIn(difference.routeOrder));
    return std::move(builder).build();
}

}  // namespace crosstick::plan
