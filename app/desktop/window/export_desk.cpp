#include "app/desktop/window/export_desk.h"

#include <QAction>
#include <QFileInfo>
#include <QMenu>
#include <utility>

#include "app/desktop/window/fault_box.h"
#include "app/desktop/window/file_desk.h"
#include "app/wording/spoken.h"
#include "core/casefile/exchange.h"

namespace drapewright::desktop {
namespace {

using dressing::Plan;
using wound::Case;

/// The text of a file, or why there is none.
struct Exported {
  std::string text;
  std::optional<InputError> fault;
};

std::string as_fhir(const Case& value, const Plan& plan, const Progress& progress) {
  return casefile::fhir_bundle(value, casefile::measures_over_time(value, plan, progress));
}

std::string as_measures(const Case& value, const Plan& plan, const Progress& progress) {
  return casefile::measures_csv(value, casefile::measures_over_time(value, plan, progress));
}

std::string as_materials(const Case&, const Plan& plan, const Progress&) {
  return casefile::materials_csv(plan);
}

std::string as_dxf(const Case&, const Plan& plan, const Progress&) {
  return casefile::cut_dxf(plan);
}

}  // namespace

struct ExportDesk::Format {
  const char* name;  ///< of the action, for who looks for it
  const char* menu_text;
  const char* tip;
  const char* title;
  const char* filter;
  const char* suffix;
  const char* ending;
  std::string (*write)(const Case&, const Plan&, const Progress&);

  Exported text_of(const PlanResult& result, const Progress& progress) const {
    try {
      return {write(*result.planned, *result.plan, progress), {}};
    } catch (const InputError& error) {
      return {{}, error};
    } catch (const Cancelled&) {
      throw;
    } catch (const std::exception& error) {  // too little memory, say
      return {{},
              InputError(say("the program failed on it: {1}", {error.what()}),
                         say("a case that this version can plan"))};
    }
  }
};

const std::vector<ExportDesk::Format>& ExportDesk::formats() {
  static const std::vector<Format> all{
      {"export_fhir", term("Measures as &FHIR…"),
       term("The measures of every assessment as FHIR R4 Observations, without a patient."),
       term("Export the measures"), term("FHIR bundles (*.json);;All files (*)"), "json",
       "-fhir.json", as_fhir},
      {"export_measures", term("&Measures as CSV…"),
       term("A row for each wound of each assessment, for a spreadsheet."),
       term("Export the measures"), term("Comma-separated values (*.csv);;All files (*)"), "csv",
       "-measures.csv", as_measures},
      {"export_materials", term("Mat&erials as CSV…"),
       term("The materials with a decimal point and names that programs know."),
       term("Export the materials"), term("Comma-separated values (*.csv);;All files (*)"), "csv",
       "-materials.csv", as_materials},
      {"export_cut", term("&Cut layout as DXF…"),
       term("The sheets to open with their pieces at life size, in mm, for a plotter."),
       term("Export the cut layout"), term("DXF (*.dxf);;All files (*)"), "dxf", "-cut.dxf",
       as_dxf},
  };
  return all;
}

ExportDesk::ExportDesk(FileDesk& files, std::function<PlanResult()> latest, QWidget& window)
    : QObject(&window), files_(files), latest_(std::move(latest)), window_(window) {
  connect(&worker_, &Worker::busy_changed, this, &ExportDesk::offer);
}

void ExportDesk::add_to(QMenu& menu) {
  for (const Format& format : formats()) {
    QAction* action =
        menu.addAction(spoken(format.menu_text), this, [this, &format] { save(format); });
    action->setObjectName(format.name);
    action->setToolTip(spoken(format.tip));
    actions_.push_back(action);
  }
  offer();
}

void ExportDesk::offer() {
  const bool possible = latest_().plan != nullptr && !worker_.is_busy();
  for (QAction* action : actions_) action->setEnabled(possible);
}

void ExportDesk::save(const Format& format) {
  const PlanResult result = latest_();  // the case may change while the place is asked for
  if (!result.plan) return;
  const QString path =
      files_.ask_place(spoken(format.title), spoken(format.filter), format.suffix, format.ending);
  if (path.isEmpty()) return;
  worker_.request([this, result, path, &format](const Progress& progress) -> Worker::Delivery {
    return [this, path, exported = format.text_of(result, progress)] {
      if (!exported.fault) return files_.write(path, QByteArray::fromStdString(exported.text));
      show_fault(&window_, spoken("“{1}” was not saved.", {QFileInfo(path).fileName()}),
                 *exported.fault, spoken("The file is as it was."));
    };
  });
}

}  // namespace drapewright::desktop
