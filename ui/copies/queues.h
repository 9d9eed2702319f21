#pragma once

#include <string>

#include <QString>
#include <QStringList>

#include "ui/work/errands.h"

namespace crosstick::copies {

/// Printer queues that the system knows (CUPS); none where it has no print system.
[[nodiscard]] QStringList printQueues();
/// What goes to a queue: a PDF under a title, so many sets of it, each whole before the next.
struct PrintOrder {
    QString queue, title;
    std::string pdf;
    int sets = 1;
};
/// Sends it, never scaled; ends early where the course is stopped. Any thread. Gives what went wrong, empty where
/// nothing did.
[[nodiscard]] QString sendToQueue(const PrintOrder& order, const work::Course& course);

}  // namespace crosstick::copies
