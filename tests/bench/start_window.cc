// The window as the program opens it on a plan. Tells when it is usable or everything is drawn, and ends.
#include <filesystem>
#include <optional>

#include <QApplication>
#include <QTimer>

#include "tests/bench/usable.h"
#include "tests/places.h"
#include "tests/sheets/our_reader.h"
#include "ui/look/machine_fonts.h"
#include "ui/window/window.h"

int main(int argc, char** argv) {
    using namespace crosstick;
    std::optional<look::MachineFonts> fonts(std::in_place);
    QApplication application(argc, argv);
    fonts.reset();
    const std::filesystem::path plan(argv[1]);
    const std::filesystem::path folder(argv[2]);
    if (!look::bringFace(places::share())) {
        return 1;
    }
    window::Outside outside;
    outside.plan = plan;
    outside.share = places::share();
    outside.state = folder / "journals";
    outside.settings = folder / "window.ini";
    outside.reader = crosstick::testing::reader();
    outside.seed = 1;
    outside.now = [] { return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()); };
    outside.say = [](const Error& error) { return QString::fromLatin1(error.fault.name.data()); };
    outside.demo = [plan](work::Course&) { return Result<std::filesystem::path>(plan); };
    window::Window window(std::move(outside));
    window.show();
    QTimer look;
    // Usable: the sheet is seen and answers to the hand. Drawn: tiles and films are all there.
    const bool untilDrawn = std::string_view(argv[3]) == "drawn";
    QObject::connect(&look, &QTimer::timeout, [&] {
        const bool isUsable = window.work().isOpen() && window.table().isVisible() && window.table().hasPainted();
        if (isUsable && (!untilDrawn || window.table().isSettled())) {
            usable();
        }
    });
    look.start(1);
    return QApplication::exec();
}
