#include <algorithm>
#include <fstream>
#include <iterator>
#include <ostream>

#include <fmt/format.h>

#include "app/command.h"
#include "app/commands/plan_lines.h"
#include "app/faults.h"
#include "core/files/plan_file.h"

namespace crosstick::app {
namespace {

struct Options {
    std::string plan, from;
    std::vector<std::string> lines;
    bool list = false;
};

constexpr std::size_t kMostBytes = 4U << 20U;  // of lines; a plan of a thousand events has a fiftieth of it

Result<std::string> textOf(const Options& options, const Surroundings& surroundings) {
    std::string text;
    for (const std::string& line : options.lines) {
        text += line + '\n';
    }
    if (options.from.empty()) {
        return text;
    }
    std::ifstream file;
    if (options.from != "-") {
        file.open(options.from, std::ios::binary);
    }
    std::istream& in = options.from == "-" ? surroundings.in : file;
    std::string read;
    for (std::string line; read.size() <= kMostBytes && std::getline(in, line);) {
        read += line + '\n';
    }
    if ((options.from != "-" && !file.is_open()) || in.bad() || read.size() > kMostBytes) {
        return fail(kCannotRead, {{"file", options.from}});
    }
    return read + text;
}

Exit enter(const Options& options, const Surroundings& surroundings) {
    const auto access = options.list ? files::Access::ReadOnly : files::Access::ReadWrite;
    auto file = files::PlanFile::open(options.plan, access);
    if (!file) {
        return couldNot(surroundings, file.error());
    }
    if (options.list) {
        surroundings.out << linesOf(file->plan());
        return Exit::Done;
    }
    const auto text = textOf(options, surroundings);
    if (!text) {
        return couldNot(surroundings, text.error());
    }
    IdSource ids(surroundings.seed);
    const auto next = withLines(file->plan(), *text, ids);
    if (!next) {
        return couldNot(surroundings, next.error());
    }
    if (const auto saved = file->save(*next, surroundings.now); !saved) {
        return couldNot(surroundings, saved.error());
    }
    const plan::Force& force = next->force();
    surroundings.out << fmt::format("{}: {} elements, {} tasks, {} events.\n", options.plan, force.elements.size(),
                                    force.tasks.size(), force.events.size());
    return Exit::Done;
}

std::string manual() {
    std::string text =
        "Put timing, force, tasks, events and evacuation into a plan, a line each; all of them or none.\n\n"
        "A line is WHAT NAME: CLAUSE; CLAUSE. What no clause names stays as it was; \"none\" as the only clause takes\n"
        "out what the line speaks of. \"#\" begins a remark. Times are DTGs or ISO times.\n\n";
    for (const LineKind& kind : lineKinds()) {
        text += "  " + std::string(kind.form) + '\n';
    }
    return text;
}

}  // namespace

void addEnter(CLI::App& program, Action& action) {
    auto* command = program.add_subcommand("enter", manual());
    auto options = std::make_shared<Options>();
    command->add_option("PLAN", options->plan, "The plan's file")->required();
    command->add_option("LINE", options->lines, "Lines, each quoted: \"h-hour: 140515OMAR27\"");
    command->add_option("--from", options->from, "A file of lines, taken before those; - for standard input");
    command->add_flag("--list", options->list, "Write what the plan has as such lines, and change nothing");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return enter(*options, surroundings); };
    });
}

}  // namespace crosstick::app
