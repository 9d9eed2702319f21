#include "ui/copies/queues.h"

#include <QCoreApplication>
#include <QProcess>

namespace crosstick::copies {
namespace {

constexpr int kPatienceMs = 2000;

QString tr(const char* words) {
    return QCoreApplication::translate("Copies", words);
}

}  // namespace

QStringList printQueues() {
    QProcess ask;
    ask.start(QStringLiteral("lpstat"), {QStringLiteral("-e")});
    if (!ask.waitForFinished(kPatienceMs) || ask.exitCode() != 0) {
        return {};
    }
    return QString::fromUtf8(ask.readAllStandardOutput()).split(QLatin1Char('\n'), Qt::SkipEmptyParts);
}

QString sendToQueue(const QString& queue, const std::string& pdf) {
    QProcess send;
    send.start(QStringLiteral("lp"), {QStringLiteral("-d"), queue, QStringLiteral("-o"),
                                      QStringLiteral("print-scaling=none"), QStringLiteral("-")});
    if (!send.waitForStarted(kPatienceMs)) {
        return tr("The system's \"lp\" command is missing. Save as PDF and print that at 100 %.");
    }
    send.write(pdf.data(), static_cast<qint64>(pdf.size()));
    send.closeWriteChannel();
    if (!send.waitForFinished(5 * kPatienceMs) || send.exitCode() != 0) {
        return tr("The printer's queue did not take it: ") + QString::fromUtf8(send.readAllStandardError()).trimmed();
    }
    return {};
}

}  // namespace crosstick::copies
