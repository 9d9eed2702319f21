#pragma once

#include <algorithm>
#include <cstddef>
#include <memory>
#include <vector>

#include "core/units/uuid.h"

namespace crosstick::plan {

/// Values with an `id`, sorted by it, in shared chunks of about 128: one edit copies one chunk and the list of chunks,
/// so a step of the history costs about 4 KB however large the plan is, and two neighbours are compared chunk by chunk
/// by pointer. An immutable value: every change gives a new list.
template <class T>
class ChunkedList {
  public:
    using Ptr = std::shared_ptr<const T>;
    using Chunk = std::vector<Ptr>;
    using ChunkPtr = std::shared_ptr<const Chunk>;
    static constexpr std::size_t kFull = 256;   ///< split above
    static constexpr std::size_t kFresh = 128;  ///< size of chunks made in bulk

    ChunkedList() = default;
    /// From values in any order; of two with one identity the later counts.
    explicit ChunkedList(std::vector<Ptr> values);

    [[nodiscard]] std::size_t size() const { return size_; }
    [[nodiscard]] bool isEmpty() const { return size_ == 0; }
    [[nodiscard]] Ptr find(const Uuid& id) const;
    [[nodiscard]] ChunkedList with(Ptr value) const;          ///< added, or in place of the one with its identity
    [[nodiscard]] ChunkedList without(const Uuid& id) const;  ///< unchanged where there is none
    [[nodiscard]] const std::vector<ChunkPtr>& chunks() const { return *chunks_; }

    template <class Visit>
    void forEach(Visit&& visit) const {
        for (const ChunkPtr& chunk : *chunks_) {
            for (const Ptr& value : *chunk) {
                visit(value);
            }
        }
    }

    friend bool operator==(const ChunkedList& a, const ChunkedList& b) {
        if (a.chunks_ == b.chunks_) {
            return true;
        }
        if (a.size_ != b.size_) {
            return false;
        }
        return a.equalValues(b);
    }

  private:
    std::shared_ptr<const std::vector<ChunkPtr>> chunks_ = std::make_shared<const std::vector<ChunkPtr>>();
    std::size_t size_ = 0;

    [[nodiscard]] std::size_t chunkFor(const Uuid& id) const;
    [[nodiscard]] bool equalValues(const ChunkedList& other) const;
    static std::vector<ChunkPtr> cut(const std::vector<Ptr>& sorted);
};

template <class T>
std::vector<typename ChunkedList<T>::ChunkPtr> ChunkedList<T>::cut(const std::vector<Ptr>& sorted) {
    std::vector<ChunkPtr> chunks;
    for (std::size_t at = 0; at < sorted.size(); at += kFresh) {
        const auto end = std::min(at + kFresh, sorted.size());
        chunks.push_back(std::make_shared<const Chunk>(sorted.begin() + static_cast<std::ptrdiff_t>(at),
                                                       sorted.begin() + static_cast<std::ptrdiff_t>(end)));
    }
    return chunks;
}

template <class T>
ChunkedList<T>::ChunkedList(std::vector<Ptr> values) {
    std::stable_sort(values.begin(), values.end(), [](const Ptr& a, const Ptr& b) { return a->id < b->id; });
    std::vector<Ptr> unique;
    unique.reserve(values.size());
    for (Ptr& value : values) {
        if (!unique.empty() && unique.back()->id == value->id) {
            unique.back() = std::move(value);
        } else {
            unique.push_back(std::move(value));
        }
    }
    size_ = unique.size();
    chunks_ = std::make_shared<const std::vector<ChunkPtr>>(cut(unique));
}

/// The chunk that holds an identity or would hold it: the last one that does not begin after it.
template <class T>
std::size_t ChunkedList<T>::chunkFor(const Uuid& id) const {
    const auto after = std::upper_bound(chunks_->begin(), chunks_->end(), id,
                                        [](const Uuid& a, const ChunkPtr& b) { return a < b->front()->id; });
    return after == chunks_->begin() ? 0 : static_cast<std::size_t>(after - chunks_->begin()) - 1;
}

template <class T>
typename ChunkedList<T>::Ptr ChunkedList<T>::find(const Uuid& id) const {
    if (chunks_->empty()) {
        return nullptr;
    }
    const Chunk& chunk = *(*chunks_)[chunkFor(id)];
    const auto at =
        std::lower_bound(chunk.begin(), chunk.end(), id, [](const Ptr& a, const Uuid& b) { return a->id < b; });
    return at != chunk.end() && (*at)->id == id ? *at : nullptr;
}

template <class T>
ChunkedList<T> ChunkedList<T>::with(Ptr value) const {
    if (chunks_->empty()) {
        return ChunkedList(std::vector<Ptr>{std::move(value)});
    }
    const std::size_t index = chunkFor(value->id);
    Chunk chunk = *(*chunks_)[index];
    auto at =
        std::lower_bound(chunk.begin(), chunk.end(), value->id, [](const Ptr& a, const Uuid& b) { return a->id < b; });
    ChunkedList next;
    next.size_ = size_;
    if (at != chunk.end() && (*at)->id == value->id) {
        *at = std::move(value);
    } else {
        chunk.insert(at, std::move(value));
        ++next.size_;
    }
    std::vector<ChunkPtr> chunks = *chunks_;
    if (chunk.size() > kFull) {
        auto halves = cut(chunk);
        chunks.erase(chunks.begin() + static_cast<std::ptrdiff_t>(index));
        chunks.insert(chunks.begin() + static_cast<std::ptrdiff_t>(index), halves.begin(), halves.end());
    } else {
        chunks[index] = std::make_shared<const Chunk>(std::move(chunk));
    }
    next.chunks_ = std::make_shared<const std::vector<ChunkPtr>>(std::move(chunks));
    return next;
}

template <class T>
ChunkedList<T> ChunkedList<T>::without(const Uuid& id) const {
    if (!find(id)) {
        return *this;
    }
    const std::size_t index = chunkFor(id);
    Chunk chunk = *(*chunks_)[index];
    std::erase_if(chunk, [&](const Ptr& value) { return value->id == id; });
    std::vector<ChunkPtr> chunks = *chunks_;
    if (chunk.empty()) {
        chunks.erase(chunks.begin() + static_cast<std::ptrdiff_t>(index));
    } else {
        chunks[index] = std::make_shared<const Chunk>(std::move(chunk));
    }
    ChunkedList next;
    next.size_ = size_ - 1;
    next.chunks_ = std::make_shared<const std::vector<ChunkPtr>>(std::move(chunks));
    return next;
}

template <class T>
bool ChunkedList<T>::equalValues(const ChunkedList& other) const {
    std::vector<Ptr> mine;
    mine.reserve(size_);
    forEach([&](const Ptr& value) { mine.push_back(value); });
    std::size_t at = 0;
    bool equal = true;
    other.forEach([&](const Ptr& value) {
        const Ptr& own = mine[at++];
        equal = equal && (own == value || *own == *value);
    });
    return equal;
}

}  // namespace crosstick::plan
