#include "core/sheets/foreign_reader.h"

#include <optional>

#include "core/sheets/dataset.h"
#include "core/sheets/faults.h"
#include "core/worker/faults.h"

namespace crosstick::sheets {
namespace {

using worker::Record;

constexpr int kGlance = 2048;  ///< longest side of the first picture: about a screen
constexpr worker::Limits kLook{std::int64_t{1} << 30, 0, std::chrono::seconds(5), std::chrono::seconds(5)};

/// A sheet may use what its size needs; it is a hang only when nothing moves.
worker::Limits copyLimits(const SheetCache& cache) {
    return {std::int64_t{5} << 29, cache.mostBytes(), std::chrono::seconds(60), std::chrono::hours(1)};
}

/// What ended the reader, said of the file that it read.
Error ofFile(const Error& error, const std::filesystem::path& file) {
    if (error.fault == worker::kStopped || error.fault == worker::kNoProgram) {
        return error;
    }
    const std::string_view name = error.fault.name;
    if (!name.starts_with("worker/")) {
        return error;
    }
    Error told{kReader, {{"file", file.string()}}};
    if (error.fault == worker::kTooLong) {
        return std::move(told).with("why", "it takes too long");
    }
    if (error.fault == worker::kTooMuchMemory) {
        return std::move(told).with("why", "it wants more memory than its size explains");
    }
    if (error.fault == worker::kTooMuchOutput) {
        return std::move(told).with("why", "its copy is larger than the space kept for copies");
    }
    return std::move(told).with("why", "its bytes break the reader");
}

/// The first picture as its rows come in. Each begins where the last ones ended; others are garbled.
class GrowingPicture {
  public:
    /// The picture, once its last rows are there.
    [[nodiscard]] Result<const Pixels*> add(const messages::PictureRows& more) {
        if (more.first != rows_ || (rows_ > 0 && (more.columns != whole_.columns || more.rows != whole_.rows))) {
            return fail(worker::kGarbled);
        }
        if (rows_ == 0) {
            whole_ = {more.columns, more.rows, {}};
            whole_.rgb.reserve(static_cast<std::size_t>(more.columns) * static_cast<std::size_t>(more.rows));
        }
        whole_.rgb.insert(whole_.rgb.end(), more.rgb.begin(), more.rgb.end());
        rows_ = static_cast<int>(whole_.rgb.size() / static_cast<std::size_t>(whole_.columns));
        return rows_ == whole_.rows ? &whole_ : nullptr;
    }

  private:
    Pixels whole_;
    int rows_ = 0;
};

}  // namespace

Result<void> ForeignReader::order(const messages::Order& order, const worker::Limits& limits, const Watch& watch,
                                  const std::function<Result<void>(const Record&)>& hear) const {
    auto child = worker::Child::start(program_, limits);
    if (!child) {
        return tl::unexpected(child.error());
    }
    const auto told = [&](const Error& error) { return tl::unexpected(ofFile(error, order.file)); };
    child->send(messages::pack(order));
    while (true) {
        const auto record = child->next(watch.isStopped);
        if (!record) {
            return told(record.error());
        }
        if (!*record) {
            return told(Error{worker::kGarbled, {}});  // it went without a last word
        }
        if ((*record)->kind == messages::kDone) {
            return {};
        }
        if ((*record)->kind == messages::kFault) {
            return told(messages::unpackFault(**record));
        }
        if ((*record)->kind == messages::kProgress) {
            const auto progress = messages::unpackProgress(**record);
            if (!progress) {
                return told(progress.error());
            }
            if (watch.tell) {
                watch.tell(*progress);
            }
        } else if (auto heard = hear(**record); !heard) {
            return told(heard.error());
        }
    }
}

Result<FileReport> ForeignReader::inspect(const std::filesystem::path& file, const Watch& watch) const {
    std::optional<FileReport> report;
    messages::Order wish;
    wish.file = std::filesystem::absolute(file);
    const auto done = order(wish, kLook, watch, [&](const Record& record) {
        return unpackReport(record).map([&](FileReport taken) { report = std::move(taken); });
    });
    if (!done) {
        return tl::unexpected(done.error());
    }
    if (!report) {
        return tl::unexpected(ofFile(Error{worker::kGarbled, {}}, file));
    }
    return *report;
}

Result<std::filesystem::path> ForeignReader::copy(messages::Order wish, const std::string& what,
                                                  const Watch& watch) const {
    const auto name = SheetCache::nameFor(wish.file, what);
    if (!name) {
        return tl::unexpected(name.error());
    }
    if (auto found = cache_.find(*name); !found.empty()) {
        return found;
    }
    const auto place = cache_.place(*name);
    if (!place) {
        return tl::unexpected(place.error());
    }
    wish.out = std::filesystem::absolute(*place);
    GrowingPicture picture;
    const auto done = order(wish, copyLimits(cache_), watch, [&](const Record& record) {
        return messages::unpackPicture(record)
            .and_then([&](const messages::PictureRows& rows) { return picture.add(rows); })
            .map([&](const Pixels* whole) {
                if (whole != nullptr && watch.show) {
                    watch.show(*whole);
                }
            });
    });
    if (!done) {
        std::error_code ignored;
        std::filesystem::remove(*place, ignored);
        return tl::unexpected(done.error());
    }
    return cache_.take(*place, *name);
}

Result<std::filesystem::path> ForeignReader::sheet(const std::filesystem::path& file, const Watch& watch) const {
    messages::Order wish;
    wish.task = messages::Task::Pyramid;
    wish.file = std::filesystem::absolute(file);
    wish.picture = watch.show ? kGlance : 0;
    return copy(std::move(wish), kPyramidKind, watch);
}

bool ForeignReader::hasSheet(const std::filesystem::path& file) const {
    const auto name = SheetCache::nameFor(std::filesystem::absolute(file), kPyramidKind);
    return name && !cache_.find(*name).empty();
}

Result<std::filesystem::path> ForeignReader::heights(const std::filesystem::path& file, HeightUnit unit,
                                                     const Watch& watch) const {
    messages::Order wish;
    wish.task = messages::Task::Heights;
    wish.file = std::filesystem::absolute(file);
    wish.unit = unit;
    return copy(std::move(wish), "heights 1 " + std::to_string(static_cast<int>(unit)), watch);
}

}  // namespace crosstick::sheets
