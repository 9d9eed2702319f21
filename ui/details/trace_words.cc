#include "ui/details/trace_words.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "core/movement/route_figures.h"

namespace crosstick::details {
namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("Traces", words);
}

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

}  // namespace

QString staleWords(const plan::Plan& plan, const files::StaleTrace& stale) {
    const plan::MeasurePtr copy = plan.measure(stale.copy);
    if (!copy || !copy->tracedFrom) {
        return {};
    }
    const std::string label = movement::label(*copy);
    const QString name = label.empty() ? tr("A thing") : text(label);
    const QString film = text(copy->tracedFrom->film);
    if (!stale.source) {
        return tr("%1 was traced from %2, which has it no more.").arg(name, film);
    }
    if (stale.moved < Metres(0.5)) {
        return tr("%1 was traced from %2, which words it otherwise now.").arg(name, film);
    }
    return tr("%1 was traced from %2, where it now lies up to %3 m away.")
        .arg(name, film)
        .arg(std::llround(stale.moved.value()));
}

QString traceWords(const work::Work& work, const plan::ItemId& item) {
    const plan::MeasurePtr measure = work.plan().measure(item);
    if (!measure || !measure->tracedFrom) {
        return {};
    }
    const auto& stale = work.staleTraces();
    const auto found =
        std::find_if(stale.begin(), stale.end(), [&](const files::StaleTrace& one) { return one.copy == item; });
    if (found == stale.end()) {
        return tr("Traced from %1.").arg(text(measure->tracedFrom->film));
    }
    return staleWords(work.plan(), *found) + (found->source ? tr(" Ctrl+Alt+Y renews it.") : QString());
}

}  // namespace crosstick::details
