#include "app/panels/finding_remedy.h"

#include <QCoreApplication>

#include "core/remedy/remedy.h"

namespace hither {

QString mendLabel(const Finding& finding) {
    const auto tr = [](const char* text) { return QCoreApplication::translate("hither::Remedy", text); };
    switch (finding.remedy->kind) {
        case Remedy::Kind::insertParts: {
            const auto names = finding.words.find("insert");
            return names == finding.words.end() ? tr("Add parts between") : tr("Add %1").arg(QString::fromStdString(names->second));
        }
        case Remedy::Kind::replacePart: return tr("Replace the part");
        case Remedy::Kind::moveJoint: return tr("Move the joint");
        case Remedy::Kind::solve: return tr("Bring the switch to its site");
        case Remedy::Kind::measure:
        case Remedy::Kind::chooseGroup: break;
    }
    return tr("Mend");
}

bool mend(const EditorContext& context, const QString& id) {
    context.document.endGesture();
    const Finding* finding = context.analysis.finding(id);
    if (!finding || !finding->remedy) return false;
    const QString label = mendLabel(*finding);
    if (!context.analysis.upToDate())
        return context.document.apply(label, {std::nullopt, QCoreApplication::translate("hither::Remedy", "The plan has just changed; try again when the findings are up to date.").toStdString()});
    const Plan& plan = context.document.plan();
    return context.document.apply(label, applyRemedy(plan, context.view.option(), *finding, context.shipped->body, contextFor(plan, *context.shipped)));
}

}  // namespace hither
