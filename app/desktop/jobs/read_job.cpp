#include "app/desktop/jobs/read_job.h"

#include <filesystem>
#include <utility>

#include "app/wording/spoken.h"
#include "core/casefile/case_json.h"

namespace drapewright::desktop {
namespace {

ReadResult read(const QString& path, const Progress& progress) {
  ReadResult result{.path = path};
  try {
    const std::filesystem::path file(path.toStdU16String());
    result.value = std::make_shared<const wound::Case>(casefile::read_case(file, progress));
  } catch (const InputError& error) {
    result.fault = error;
  } catch (const Cancelled&) {
    throw;
  } catch (const std::exception& error) {  // too little memory, say
    result.fault = InputError(say("the program failed on it: {1}", {error.what()}),
                              say("a case file that this version reads"));
  }
  return result;
}

}  // namespace

ReadJob::ReadJob(QObject* parent) : QObject(parent) {
  connect(&worker_, &Worker::progressed, this, &ReadJob::progressed);
  connect(&worker_, &Worker::busy_changed, this, &ReadJob::busy_changed);
}

void ReadJob::request(const QString& path) {
  worker_.request([this, path](const Progress& progress) -> Worker::Delivery {
    return [this, result = read(path, progress)] { emit finished(result); };
  });
}

}  // namespace drapewright::desktop
