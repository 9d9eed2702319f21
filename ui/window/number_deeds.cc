// Numbers along the routes, and papers given out that freeze them.
#include <QSettings>

#include "core/plan/numbering.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

}  // namespace

/// Along the primary routes, then the alternates. Where papers would become wrong it is asked first, at the foot.
void Window::renumber() {
    const plan::Renumbering done = plan::renumbered(work_.committed());
    if (done.changed == 0) {
        say(tr("Checkpoints run along the routes already."));
        return;
    }
    const auto take = [this] { work_.commit(plan::renumbered(work_.committed()).plan, "renumber along the routes"); };
    if (done.killed.empty()) {
        take();
        return;
    }
    QStringList papers;
    for (const plan::Issue& issue : done.killed) {
        papers << tr("%1 (given out %2)")
                      .arg(text(issue.papers), text(dateTimeGroup(issue.at, work_.plan().heading().zone)));
    }
    question_->ask(tr("%n numbers change. These papers become wrong: %1. Renumber? yes or no:", nullptr,
                      static_cast<int>(done.changed))
                       .arg(papers.join(QStringLiteral("; "))),
                   {}, [this, take](const QString& answer) -> std::optional<QString> {
                       if (answer.compare(tr("yes"), Qt::CaseInsensitive) == 0) {
                           take();
                           say(tr("Numbered anew. Give out these papers again, and call the old ones in."));
                           return std::nullopt;
                       }
                       if (answer.compare(tr("no"), Qt::CaseInsensitive) == 0) {
                           return std::nullopt;
                       }
                       return tr("Write yes, or leave the numbers as they are with Esc.");
                   });
}

void Window::giveOut(plan::Issue issue) {
    if (issue.papers.empty()) {
        for (const plan::FilmPtr& film : work_.committed().films()) {
            issue.papers += (issue.papers.empty() ? "" : ", ") + film->name;
        }
        issue.numbers = plan::numbersOnPapers(work_.committed());
    }
    issue.at = outside_.now();
    const int count = static_cast<int>(issue.numbers.size());
    work_.commit(plan::givenOut(work_.committed(), std::move(issue)), "give papers out");
    say(tr("Given out. %n numbers on these papers stay as they are from now on.", nullptr, count));
}

void Window::setInserted(plan::Inserted inserted) {
    work_.setInserted(inserted);
    settings_->setValue(QStringLiteral("insertedNumbers"),
                        inserted == plan::Inserted::Lettered ? QStringLiteral("lettered") : QStringLiteral("next"));
    renewHead();
}

}  // namespace crosstick::window
