#pragma once

#include <filesystem>
#include <functional>
#include <iosfwd>
#include <string>

#include <CLI/CLI.hpp>

#include "core/sheets/foreign_reader.h"
#include "core/units/result.h"
#include "core/units/time.h"

namespace crosstick::app {

enum class Exit { Done = 0, CouldNot = 1, WrongUse = 2 };

/// Everything a command takes from the world, handed in, so that a test can give its own.
struct Surroundings {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
    std::filesystem::path share;   ///< where faces, coefficients and the demo's geometry stand
    sheets::ForeignReader reader;  ///< of map sheets and height models
    Instant now;
    std::uint64_t seed;  ///< of new identities
};

/// What the chosen command will do once the line has been read; set by its callback.
using Action = std::function<Exit(const Surroundings&)>;

/// Says an error in one line on err and gives Exit::CouldNot.
Exit couldNot(const Surroundings& surroundings, const Error& error);

/// Each adds its subcommand to the program. One file a command in app/commands.
void addOpen(CLI::App& program, Action& action);
void addDemo(CLI::App& program, Action& action);
void addNew(CLI::App& program, Action& action);
void addEnter(CLI::App& program, Action& action);
void addDraw(CLI::App& program, Action& action);
void addShow(CLI::App& program, Action& action);
void addFilms(CLI::App& program, Action& action);
void addCard(CLI::App& program, Action& action);
void addMarch(CLI::App& program, Action& action);
void addChecklist(CLI::App& program, Action& action);
void addMatrix(CLI::App& program, Action& action);
void addProfile(CLI::App& program, Action& action);
void addGrid(CLI::App& program, Action& action);
void addLeg(CLI::App& program, Action& action);
void addDrift(CLI::App& program, Action& action);
void addPace(CLI::App& program, Action& action);
void addLight(CLI::App& program, Action& action);
void addSpecimen(CLI::App& program, Action& action);
void addSheet(CLI::App& program, Action& action);
void addLay(CLI::App& program, Action& action);
void addRegister(CLI::App& program, Action& action);
void addCarry(CLI::App& program, Action& action);
void addPicture(CLI::App& program, Action& action);
void addAbout(CLI::App& program, Action& action);

}  // namespace crosstick::app
