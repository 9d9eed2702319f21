// The process that meets foreign files: takes one order on standard input, answers on standard output, and is gone.
// Started by the program, never by hand.
#include <unistd.h>

#include "core/reading/answering.h"
#include "core/reading/drivers.h"
#include "core/worker/confine.h"
#include "core/worker/serving.h"

int main(int argc, char** argv) {
    namespace worker = crosstick::worker;
    const auto limits = worker::limitsFrom({argv, static_cast<std::size_t>(argc)});
    if (!limits) {
        return static_cast<int>(worker::Ending::WrongUse);
    }
    worker::confineMyself(*limits);
    crosstick::reading::prepareDrivers();
    const auto order = worker::awaitOrder();
    if (!order) {
        return static_cast<int>(worker::Ending::WrongUse);
    }
    crosstick::reading::answer(*order, [](const worker::Record& record) {
        if (!worker::say(record)) {
            ::_exit(static_cast<int>(worker::Ending::Done));  // nobody listens any more: the work is for nobody
        }
    });
    return static_cast<int>(worker::Ending::Done);
}
