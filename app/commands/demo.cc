#include "sample-data/demo.h"

#include <ostream>

#include "app/command.h"
#include "ui/press/gui_start.h"

namespace crosstick::app {
namespace {

Exit makeDemo(const std::string& folder, bool replace, const Surroundings& surroundings) {
    const press::GuiStart gui;
    const demo::DemoOrder order{folder, surroundings.share, surroundings.reader,
                                replace ? demo::Existing::Replace : demo::Existing::Keep, [&](std::string_view what) {
                                    surroundings.err << "making " << what << " ...\n" << std::flush;
                                }};
    if (auto made = demo::makeDemo(order); !made) {
        return couldNot(surroundings, made.error());
    }
    surroundings.out << folder << ": Exercise SLOW KETTLE on the invented island of Ulmeray: plan.gpkg, sheet.tif, "
                     << "elevation.tif\n";
    return Exit::Done;
}

}  // namespace

void addDemo(CLI::App& program, Action& action) {
    auto* command = program.add_subcommand("demo", "Make the demo: an invented sheet and a plan on it");
    auto folder = std::make_shared<std::string>();
    auto replace = std::make_shared<bool>(false);
    command->add_option("DIR", *folder, "The folder to make plan.gpkg, sheet.tif and elevation.tif in")->required();
    command->add_flag("--replace", *replace, "Make them anew where they stand already");
    command->callback([folder, replace, &action] {
        action = [folder, replace](const Surroundings& surroundings) {
            return makeDemo(*folder, *replace, surroundings);
        };
    });
}

}  // namespace crosstick::app
