#include "ui/copies/queues.h"

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QProcess>

namespace crosstick::copies {
namespace {

constexpr int kPatienceMs = 2000;
constexpr int kStepMs = 100;     ///< how soon a sending that is given up ends
constexpr int kMostMs = 120000;  ///< a queue over a slow network takes a large set in less

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

QString sendToQueue(const PrintOrder& order, const work::Course& course) {
    QProcess send;
    QStringList words{QStringLiteral("-d"), order.queue,          QStringLiteral("-t"),
                      order.title,          QStringLiteral("-o"), QStringLiteral("print-scaling=none")};
    if (order.sets > 1) {
        words << QStringLiteral("-n") << QString::number(order.sets) << QStringLiteral("-o")
              << QStringLiteral("collate=true");
    }
    send.start(QStringLiteral("lp"), words << QStringLiteral("-"));
    if (!send.waitForStarted(kPatienceMs)) {
        return tr("The system's \"lp\" command is missing. Save as PDF and print that at 100 %.");
    }
    send.write(order.pdf.data(), static_cast<qint64>(order.pdf.size()));
    send.closeWriteChannel();
    QElapsedTimer since;
    since.start();
    while (!send.waitForFinished(kStepMs) && send.state() != QProcess::NotRunning) {
        if (course.isStopped() || since.elapsed() > kMostMs) {
            send.kill();  // what it has not handed over by now is not printed
            send.waitForFinished(kPatienceMs);
            return tr("%1 did not take it within %2 s. Look at the printer, or save as PDF and print that at 100 %.")
                .arg(order.queue)
                .arg(since.elapsed() / 1000);
        }
    }
    if (send.exitStatus() != QProcess::NormalExit || send.exitCode() != 0) {
        return tr("The printer's queue did not take it: ") + QString::fromUtf8(send.readAllStandardError()).trimmed();
    }
    return {};
}

}  // namespace crosstick::copies
