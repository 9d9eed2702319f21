#include "app/program.h"

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <ostream>

#include "app/wording/wording.h"

namespace crosstick::app {
namespace {

bool looksLikeNumber(const std::string& argument) {
    return argument.size() > 1 && argument[0] == '-' &&
           (std::isdigit(static_cast<unsigned char>(argument[1])) != 0 || argument[1] == '.');
}

/// A screen that a window could open on.
bool hasScreen() {
    // No other thread runs yet that could set them: NOLINTNEXTLINE(concurrency-mt-unsafe)
    return std::getenv("DISPLAY") != nullptr || std::getenv("WAYLAND_DISPLAY") != nullptr;
}

}  // namespace

Exit couldNot(const Surroundings& surroundings, const Error& error) {
    surroundings.err << "crosstick: " << words(error) << '\n';
    return Exit::CouldNot;
}

Exit run(std::vector<std::string> arguments, const Surroundings& surroundings) {
    CLI::App program{"Films, route cards and figures for a map sheet: a planning and training aid.", "crosstick"};
    program.require_subcommand(1);
    if (arguments.empty() && hasScreen()) {
        arguments = {"open"};  // the name alone is what a person starts from the desktop
    }
    Action action;
    for (const auto add : {addOpen,  addDemo, addNew,   addSheet,   addLay,      addRegister,  addCarry,  addDraw,
                           addEnter, addShow, addFilms, addCard,    addMarch,    addChecklist, addMatrix, addProfile,
                           addDrift, addPace, addLight, addPicture, addSpecimen, addGrid,      addLeg,    addAbout}) {
        add(program, action);
    }
    for (std::string& argument : arguments) {
        if (looksLikeNumber(argument)) {
            argument.insert(0, 1, ' ');  // a blank in front keeps the parser from taking it for an option
        }
    }
    std::reverse(arguments.begin(), arguments.end());  // the parser takes its words from the back
    try {
        program.parse(std::move(arguments));
    } catch (const CLI::ParseError& error) {
        const int code = program.exit(error, surroundings.out, surroundings.err);
        return code == 0 ? Exit::Done : Exit::WrongUse;
    }
    return action ? action(surroundings) : Exit::WrongUse;
}

}  // namespace crosstick::app
