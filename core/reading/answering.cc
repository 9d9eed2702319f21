#include "core/reading/answering.h"

#include <exception>
#include <new>

#include "core/reading/conversion.h"
#include "core/reading/height_copy.h"
#include "core/reading/inspection.h"
#include "core/sheets/faults.h"
#include "core/sheets/messages.h"
#include "core/worker/faults.h"

namespace crosstick::reading {
namespace {

namespace messages = sheets::messages;

Result<void> obey(const messages::Order& order, const Say& say) {
    const Tell tell = [&](messages::Progress progress) { say(messages::pack(progress)); };
    switch (order.task) {
        case messages::Task::Inspect:
            return inspect(order.file).map([&](const sheets::FileReport& report) { say(packReport(report)); });
        case messages::Task::Pyramid:
            return copySheet(
                order, [&](const messages::PictureRows& rows) { say(messages::pack(rows)); }, tell);
        case messages::Task::Heights:
            return copyHeights(order, tell);
    }
    return {};
}

Result<void> obeyQuietly(const messages::Order& order, const Say& say) {
    const auto file = order.file.string();
    try {
        return obey(order, say);
    } catch (const std::bad_alloc&) {
        return fail(worker::kTooMuchMemory, {{"file", file}});
    } catch (const std::exception& thrown) {
        return fail(sheets::kDamaged, {{"file", file}, {"why", std::string(thrown.what())}});
    }
}

}  // namespace

void answer(const worker::Record& record, const Say& say) {
    const auto order = messages::unpackOrder(record);
    if (!order) {
        say(messages::pack(order.error()));
        return;
    }
    const auto done = obeyQuietly(*order, say);
    say(done ? worker::Packer().record(messages::kDone) : messages::pack(done.error()));
}

}  // namespace crosstick::reading
