// What the reader says: whatever comes over the line is a message or garbled.
#include <cstdlib>
#include <span>

#include "core/sheets/messages.h"
#include "core/worker/record.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace crosstick;
    worker::RecordStream stream;
    const std::span bytes(data, size);
    stream.add(bytes.first(size / 2));
    stream.add(bytes.subspan(size / 2));
    while (const auto record = stream.next()) {
        (void)sheets::messages::unpackPicture(*record);
        (void)sheets::messages::unpackProgress(*record);
        (void)sheets::messages::unpackFault(*record);
        (void)sheets::messages::unpackOrder(*record);
        const auto report = sheets::unpackReport(*record);
        // What was believed once can be said again and is believed again.
        if (report && !(sheets::unpackReport(sheets::packReport(*report)).value() == *report)) {
            std::abort();
        }
    }
    return 0;
}
