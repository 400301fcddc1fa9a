#include <ostream>

#include "app/cli/measured_json.h"
#include "app/cli/program.h"
#include "app/words/text.h"
#include "core/plan/parts_list.h"

namespace hither::cli {

int runParts(const PartsArguments& arguments, std::ostream& out, std::ostream& err) {
    const Shipped shipped = loadShipped(err);
    const Plan plan = openPlan(arguments.plan, shipped);
    std::vector<std::string> options;
    for (const std::size_t index : chosenOptions(plan, arguments.option, arguments.plan)) options.push_back(plan.options[index].id);

    // Without a choice each option is a list of its own: they are alternatives, not to be added up.
    if (arguments.json) {
        Json lists = Json::array();
        for (const std::string& id : options) lists.push_back(Json(partsListJson(partsList(plan, {id}))));
        out << Json({{"hither_parts", 1}, {"plan", {{"id", plan.id}, {"title", plan.title}, {"revision", plan.revision}}}, {"lists", lists}}).dump(2) << "\n";
        return fine;
    }
    if (arguments.csv) {
        if (options.size() > 1 && arguments.option.empty())
            err << "hither: the list holds what is needed to build any one of the " << options.size() << " options; --option chooses one\n";
        out << partsListCsv(partsList(plan, options));
        return fine;
    }
    for (const std::string& id : options) {
        const PlanOption& option = *plan.option(id);
        const PartsList list = partsList(plan, {id});
        out << "Parts for " << (option.name.empty() ? option.id : option.name) << "\n";
        out << "  " << rightAligned("count", 5) << "  " << padded("part", 52) << rightAligned("each", 14) << rightAligned("together", 14) << "  price is\n";
        for (const PartsRow& row : list.rows) {
            out << "  " << rightAligned(std::to_string(row.count), 5) << "  " << padded(row.name, 52) << rightAligned(row.each ? printMoney(*row.each) : "no price", 14)
                << rightAligned(row.total ? printMoney(*row.total) : "", 14) << "  " << (row.each ? word(row.priceBasis.kind) : "") << "\n";
        }
        for (const Money& total : list.totals) out << "  " << rightAligned("", 5) << "  " << padded("Total", 66) << rightAligned(printMoney(total), 14) << "\n";
        if (!list.notPriced.empty()) {
            std::string names;
            for (const std::string& name : list.notPriced) names += (names.empty() ? "" : ", ") + name;
            out << wrapped("  Not in the total, having no price: " + names + ".", "  ", 100) << "\n";
        }
        if (!list.toolsNeeded.empty()) {
            std::string names;
            for (const std::string& name : list.toolsNeeded) names += (names.empty() ? "" : ", ") + name;
            out << wrapped("  Tools needed: " + names + ".", "  ", 100) << "\n";
        }
        out << "\n";
    }
    return fine;
}

}  // namespace hither::cli
