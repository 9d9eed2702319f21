#include <cstdlib>
#include <memory>
#include <ostream>

#include <QApplication>
#include <QTimer>

#include "app/command.h"
#include "app/faults.h"
#include "app/user_folders.h"
#include "app/wording/wording.h"
#include "sample-data/demo.h"
#include "ui/look/machine_fonts.h"
#include "ui/window/window.h"

namespace crosstick::app {
namespace {

struct Options {
    std::string plan;
    bool demo = false;
};

/// The demo in the user's data folder, made once.
Result<std::filesystem::path> demoPlan(const std::filesystem::path& share, const sheets::ForeignReader& reader,
                                       work::Course& course) {
    const std::filesystem::path folder = dataFolder() / "demo";
    const std::filesystem::path plan = folder / "plan.gpkg";
    std::error_code ignored;
    if (std::filesystem::exists(plan, ignored)) {
        return plan;
    }
    std::filesystem::create_directories(folder, ignored);
    int step = 0;
    const auto made = demo::makeDemo({folder, share, reader, demo::Existing::Replace,
                                      [&](std::string_view) { course.tell(step++, demo::kSteps); },
                                      [&] { return !course.isStopped(); }});
    return made ? Result<std::filesystem::path>(plan) : tl::unexpected(made.error());
}

bool hasDisplay() {
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
           qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

Exit showWindow(const Options& options, const Surroundings& surroundings) {
    if (!hasDisplay()) {
        return couldNot(surroundings, Error{kNoDisplay, {}});
    }
    int count = 1;
    char name[] = "crosstick";
    char* arguments[] = {name, nullptr};
    std::optional<look::MachineFonts> fonts(std::in_place);
    QApplication application(count, arguments);
    QApplication::setApplicationName(QStringLiteral("crosstick"));
    fonts.reset();
    (void)look::bringFace(surroundings.share);
    const std::filesystem::path share = surroundings.share;
    window::Outside outside;
    outside.share = share;
    outside.state = stateFolder() / "journals";
    outside.settings = configFolder() / "window.ini";
    outside.plan = options.plan;
    outside.seed = surroundings.seed;
    outside.now = [] { return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()); };
    outside.say = [](const Error& error) { return QString::fromStdString(words(error)); };
    outside.reader = surroundings.reader;
    outside.demo = [share, reader = surroundings.reader](work::Course& course) {
        return demoPlan(share, reader, course);
    };
    outside.version = QStringLiteral(CROSSTICK_VERSION);
    auto window = std::make_unique<window::Window>(std::move(outside));
    window->show();
    if (options.plan.empty() && options.demo) {
        QTimer::singleShot(0, window.get(), [&window] { window->run("demo"); });
    }
    const Exit exit = QApplication::exec() == 0 ? Exit::Done : Exit::CouldNot;
    const work::Ending ending = window->end();
    window.reset();
    if (ending == work::Ending::LeftBehind) {  // a thread hangs on a disk: what it may still touch is not taken down
        std::_Exit(static_cast<int>(exit));
    }
    return exit;
}

}  // namespace

void addOpen(CLI::App& program, Action& action) {
    auto* command = program.add_subcommand("open", "Open the window, on a plan if one is named");
    auto options = std::make_shared<Options>();
    command->add_option("PLAN", options->plan, "The plan's file");
    command->add_flag("--demo", options->demo, "Open the demo island, made on first use");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return showWindow(*options, surroundings); };
    });
}

}  // namespace crosstick::app
