#pragma once

#include <string>

#include <QString>
#include <QStringList>

#include "ui/work/errands.h"

namespace crosstick::copies {

/// Printer queues that the system knows (CUPS); none where it has no print system.
[[nodiscard]] QStringList printQueues();
/// Sends a PDF to a queue, never scaled; ends early where the course is stopped. Any thread. Gives what went wrong,
/// empty where nothing did.
[[nodiscard]] QString sendToQueue(const QString& queue, const QString& title, const std::string& pdf,
                                  const work::Course& course);

}  // namespace crosstick::copies
