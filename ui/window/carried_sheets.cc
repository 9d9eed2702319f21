// Map sheets that go along inside a plan's file, for handing on.
#include "core/files/carried_files.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

using work::Course;
using work::GivingUp;
using work::Lane;

QString megabytes(const std::vector<files::CarriedFile>& carried) {
    double bytes = 0;
    for (const files::CarriedFile& file : carried) {
        bytes += static_cast<double>(file.bytes);
    }
    return QLocale::c().toString(bytes / 1e6, 'f', 1);
}

}  // namespace

/// Into the file as it stands: what was not saved yet goes there with the next save.
void Window::carrySheets() {
    if (work_.file().empty()) {
        say(tr("Save the plan first: its sheets go into its file."));
        return;
    }
    work_.errands().run(
        Lane::Files, tr("Putting the sheets into the plan"), GivingUp::Allowed,
        [file = work_.file(), plan = work_.committed()](Course& course) {
            return files::carryGround(file, plan, [&course](std::int64_t done, std::int64_t of) {
                constexpr std::int64_t kKilo = 1024;  // a course counts in int
                course.tell(static_cast<int>(done / kKilo), static_cast<int>(of / kKilo) + 1);
                return !course.isStopped();
            });
        },
        [this](const Result<std::vector<files::CarriedFile>>& carried) {
            say(carried ? tr("The plan carries its sheets now, %1 MB: its file alone can be handed on.")
                              .arg(megabytes(*carried))
                        : outside_.say(carried.error()));
        });
}

void Window::carryNoSheets() {
    if (work_.file().empty()) {
        return;
    }
    work_.errands().run(
        Lane::Files, tr("Taking the sheets out of the plan"), GivingUp::Refused,
        [file = work_.file()](Course&) { return files::carryNothing(file); },
        [this](const Result<void>& dropped) {
            say(dropped ? tr("The plan carries no sheets any more; it keeps where they are.")
                        : outside_.say(dropped.error()));
        });
}

}  // namespace crosstick::window
