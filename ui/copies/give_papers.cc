// What leaves the copies page: PDFs in files, sets to a printer, and what then stands on papers that were given out.
#include <QFileDialog>
#include <QFileInfo>

#include "ui/copies/copies.h"
#include "ui/copies/queues.h"

namespace crosstick::copies {

plan::Issue Copies::papers() const {
    plan::Issue issue;
    for (const Sheet* sheet : all_) {
        issue.papers += (issue.papers.empty() ? "" : ", ") + sheet->name.toStdString();
    }
    issue.numbers = plan::numbersOnPapers(work_.committed());
    return issue;
}

PdfOrder Copies::pdfOrder() const {
    return {made_, press::pdfFacts(work_.committed()), share_,
            onePen_->isChecked() ? press::onePenInks() : press::paperInks()};
}

void Copies::write(const QString& words, std::function<Told(work::Course&)> does) {
    ++writings_;
    work_.errands().run(
        work::Lane::Makings, words, work::GivingUp::Allowed, std::move(does),
        [this, issue = papers(), isGivenOut = giveOut_->isChecked()](const Told& told) {
            --writings_;
            if (told && isGivenOut) {
                Q_EMIT givenOut(issue);
            }
            told ? Q_EMIT written(*told) : Q_EMIT failed(told.error());
        },
        [this] { --writings_; });
}

void Copies::savePdf(const QString& films, const QString& cards) {
    write(tr("Writing PDF"), [order = pdfOrder(), say = say_, films, cards](work::Course& course) -> Told {
        QStringList written;
        for (const auto& [kind, file] : {std::pair(Kind::Films, films), std::pair(Kind::Cards, cards)}) {
            if (file.isEmpty() || (kind == Kind::Films ? order.sheets->films : order.sheets->cards).empty()) {
                continue;
            }
            const auto bytes = pdfOf(order, kind, course);
            if (course.isStopped()) {
                return QString();
            }
            const auto done =
                bytes ? press::writeWhole(file.toStdString(), *bytes) : Result<void>(tl::unexpected(bytes.error()));
            if (!done) {
                return tl::unexpected(say(done.error()));
            }
            written << file;
        }
        return tr("Written: %1").arg(written.join(QStringLiteral(", ")));
    });
}

void Copies::askAndSave() {
    const QString beside = QString::fromStdString((work_.folder() / "films.pdf").string());
    const QString films =
        QFileDialog::getSaveFileName(this, tr("Films as PDF; the cards go beside them"), beside, tr("PDF (*.pdf)"));
    if (films.isEmpty()) {
        return;
    }
    const QFileInfo info(films);
    savePdf(films, info.dir().filePath(info.completeBaseName() + QStringLiteral("-cards.pdf")));
}

void Copies::printOn(const QString& queue) {
    const int sets = sets_->value();
    write(tr("Sending to %1").arg(queue), [order = pdfOrder(), say = say_, queue, sets](work::Course& course) -> Told {
        bool filmsWent = false;
        for (const Kind kind : {Kind::Films, Kind::Cards}) {
            if ((kind == Kind::Films ? order.sheets->films : order.sheets->cards).empty()) {
                continue;
            }
            const auto bytes = pdfOf(order, kind, course);
            if (!bytes) {
                return tl::unexpected(say(bytes.error()));
            }
            if (course.isStopped()) {
                return QString();
            }
            const QString title = QString::fromStdString(order.facts.title) +
                                  (kind == Kind::Films ? QStringLiteral(" films") : QStringLiteral(" route cards"));
            if (const QString fault = sendToQueue({queue, title, *bytes, sets}, course); !fault.isEmpty()) {
                return tl::unexpected(filmsWent ? tr("The films were sent, the cards not. ") + fault : fault);
            }
            filmsWent = true;
        }
        return sets == 1 ? tr("Sent to %1 at true size.").arg(queue)
                         : tr("%1 sets sent to %2 at true size.").arg(sets).arg(queue);
    });
}

}  // namespace crosstick::copies
