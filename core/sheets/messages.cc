#include "core/sheets/messages.h"

#include <algorithm>
#include <array>

#include "core/geodesy/faults.h"
#include "core/sheets/faults.h"
#include "core/worker/faults.h"

namespace crosstick::sheets::messages {
namespace {

using worker::Packer;
using worker::Unpacker;

constexpr int kLargestPicture = 4000;      // 64 MB of pixels are the longest record
constexpr std::size_t kLongestWord = 400;  // of an argument: a line, not a page
constexpr std::int64_t kMostArguments = 16;

/// All faults that a reader may name.
constexpr std::array kKnown{kFileMissing,
                            kNotARaster,
                            kDamaged,
                            kNoCrs,
                            kNoPlacement,
                            kTooLarge,
                            kColours,
                            kBlockTooLarge,
                            kHeightUnit,
                            kNotHeights,
                            kNoRoom,
                            kCrsGeographic,
                            geodesy::kUnknownCrs,
                            worker::kTooMuchMemory};

Error garbled() {
    return Error{worker::kGarbled, {}};
}

}  // namespace

worker::Record pack(const Order& order) {
    return Packer()
        .number(static_cast<std::int64_t>(order.task))
        .text(order.file.string())
        .text(order.out.string())
        .number(order.picture)
        .number(static_cast<std::int64_t>(order.unit))
        .text(order.crs)
        .record(kOrder);
}

worker::Record pack(const PictureRows& rows) {
    return Packer()
        .number(rows.columns)
        .number(rows.rows)
        .number(rows.first)
        .bytes({reinterpret_cast<const std::uint8_t*>(rows.rgb.data()), rows.rgb.size() * 4})
        .record(kPicture);
}

worker::Record pack(Progress progress) {
    return Packer().number(progress.done).number(progress.of).record(kProgress);
}

worker::Record pack(const Error& error) {
    Packer packer;
    packer.text(error.fault.name);
    const std::int64_t count =
        std::min<std::int64_t>(kMostArguments, static_cast<std::int64_t>(error.arguments.size()));
    packer.number(count);
    for (std::int64_t n = 0; n < count; ++n) {
        const Argument& argument = error.arguments[static_cast<std::size_t>(n)];
        packer.text(argument.key).number(static_cast<std::int64_t>(argument.value.index()));
        if (const auto* text = std::get_if<std::string>(&argument.value)) {
            packer.text(std::string_view(*text).substr(0, argument.key == "file" ? text->size() : kLongestWord));
        } else if (const auto* real = std::get_if<double>(&argument.value)) {
            packer.real(*real);
        } else {
            packer.number(std::get<std::int64_t>(argument.value));
        }
    }
    return packer.record(kFault);
}

Result<Order> unpackOrder(const worker::Record& record) {
    Unpacker unpacker(record.body);
    Order order;
    order.task = static_cast<Task>(unpacker.number(0, static_cast<std::int64_t>(Task::Heights)));
    order.file = unpacker.text();
    order.out = unpacker.text();
    order.picture = static_cast<int>(unpacker.number(0, kLargestPicture));
    order.unit = static_cast<HeightUnit>(unpacker.number(0, static_cast<std::int64_t>(HeightUnit::SurveyFoot)));
    order.crs = unpacker.text();
    if (record.kind != kOrder || !unpacker.isSound() || !unpacker.isAtEnd()) {
        return tl::unexpected(garbled());
    }
    return order;
}

Result<PictureRows> unpackPicture(const worker::Record& record) {
    Unpacker unpacker(record.body);
    PictureRows picture;
    picture.columns = static_cast<int>(unpacker.number(1, kLargestPicture));
    picture.rows = static_cast<int>(unpacker.number(1, kLargestPicture));
    picture.first = static_cast<int>(unpacker.number(0, picture.rows - 1));
    const std::size_t row = static_cast<std::size_t>(picture.columns) * 4;
    const auto bytes = unpacker.rest();
    const std::size_t count = bytes.size() / row;
    if (record.kind != kPicture || !unpacker.isSound() || bytes.size() != count * row || count == 0 ||
        count > static_cast<std::size_t>(picture.rows - picture.first)) {
        return tl::unexpected(garbled());
    }
    picture.rgb.resize(bytes.size() / 4);
    std::copy(bytes.begin(), bytes.end(), reinterpret_cast<std::uint8_t*>(picture.rgb.data()));
    return picture;
}

Result<Progress> unpackProgress(const worker::Record& record) {
    Unpacker unpacker(record.body);
    Progress progress;
    progress.done = static_cast<int>(unpacker.number(0, INT32_MAX));
    progress.of = static_cast<int>(unpacker.number(1, INT32_MAX));
    if (record.kind != kProgress || !unpacker.isSound() || !unpacker.isAtEnd()) {
        return tl::unexpected(garbled());
    }
    return progress;
}

Error unpackFault(const worker::Record& record) {
    Unpacker unpacker(record.body);
    const std::string name = unpacker.text();
    const auto* known = std::find_if(kKnown.begin(), kKnown.end(), [&](FaultId fault) { return fault.name == name; });
    if (record.kind != kFault || known == kKnown.end()) {
        return garbled();
    }
    Error error{*known, {}};
    for (std::int64_t left = unpacker.number(0, kMostArguments); left > 0 && unpacker.isSound(); --left) {
        Argument argument{unpacker.text(), {}};
        const std::int64_t kind = unpacker.number(0, 2);
        if (kind == 0) {
            argument.value = unpacker.text();
        } else if (kind == 1) {
            argument.value = unpacker.real();
        } else {
            argument.value = unpacker.number();
        }
        error.arguments.push_back(std::move(argument));
    }
    return unpacker.isSound() && unpacker.isAtEnd() ? error : garbled();
}

}  // namespace crosstick::sheets::messages
