#pragma once

#include <string>

#include <QString>
#include <QStringList>

namespace crosstick::copies {

/// Printer queues that the system knows (CUPS); none where it has no print system.
[[nodiscard]] QStringList printQueues();
/// Sends a PDF to a queue, never scaled. Gives what went wrong, empty where nothing did.
[[nodiscard]] QString sendToQueue(const QString& queue, const std::string& pdf);

}  // namespace crosstick::copies
