#include <ostream>

#include <fmt/format.h>

#include "app/command.h"
#include "core/files/carried_files.h"
#include "core/files/plan_file.h"

namespace crosstick::app {
namespace {

struct Options {
    std::string plan;
    bool drop = false;
};

std::string megabytes(std::int64_t bytes) {
    return fmt::format("{:.1f} MB", static_cast<double>(bytes) / 1e6);
}

Result<void> carryAll(const Options& options, const Surroundings& surroundings) {
    const auto file = files::PlanFile::open(options.plan, files::Access::ReadOnly);
    if (!file) {
        return tl::unexpected(file.error());
    }
    return files::carryGround(options.plan, file->plan()).map([&](const std::vector<files::CarriedFile>& carried) {
        for (const files::CarriedFile& one : carried) {
            surroundings.out << one.path << ": " << megabytes(one.bytes) << " inside the plan now\n";
        }
    });
}

Exit carry(const Options& options, const Surroundings& surroundings) {
    const auto done = options.drop ? files::carryNothing(options.plan) : carryAll(options, surroundings);
    return done ? Exit::Done : couldNot(surroundings, done.error());
}

}  // namespace

void addCarry(CLI::App& program, Action& action) {
    auto* command =
        program.add_subcommand("carry", "Put the plan's map sheets and height models inside its file, for handing on");
    auto options = std::make_shared<Options>();
    command->add_option("PLAN", options->plan, "The plan's file")->required();
    command->add_flag("--drop", options->drop, "Take them out again: the plan keeps only where they are");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return carry(*options, surroundings); };
    });
}

}  // namespace crosstick::app
