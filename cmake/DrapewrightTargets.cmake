# How every target of the project is made: language level, warnings, sanitizers, and the two
# functions that the rooms and the tests are declared with.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

# Members that a designated initialiser leaves out take their defaults: that is what they are for.
add_library(drapewright_flags INTERFACE)
target_compile_options(drapewright_flags INTERFACE -Wall -Wextra -Wconversion -Wshadow
                       -Wno-missing-field-initializers
                       $<$<BOOL:${DRAPEWRIGHT_WERROR}>:-Werror>
                       # The sanitizers' own code sets off false alarms of this one (<regex>).
                       $<$<BOOL:${DRAPEWRIGHT_SANITIZE}>:-Wno-maybe-uninitialized>)
if(DRAPEWRIGHT_SANITIZE)
  add_compile_options(-fsanitize=address,undefined -fno-sanitize-recover=all
                      -fno-omit-frame-pointer)
  add_link_options(-fsanitize=address,undefined)
endif()

# drapewright_room(name SOURCES a.cpp ... [USES room ...] [LIBRARIES target ...])
# A room of core: a static library `drapewright_<name>` that may include only the rooms it USES.
# tests/architecture checks the same rule on the #include lines.
function(drapewright_room name)
  cmake_parse_arguments(ROOM "" "" "SOURCES;USES;LIBRARIES" ${ARGN})
  list(TRANSFORM ROOM_USES PREPEND drapewright_)
  if(NOT ROOM_SOURCES)  # a room of headers only
    add_library(drapewright_${name} INTERFACE)
    target_include_directories(drapewright_${name} INTERFACE ${PROJECT_SOURCE_DIR})
    target_link_libraries(drapewright_${name} INTERFACE ${ROOM_USES} ${ROOM_LIBRARIES})
    return()
  endif()
  add_library(drapewright_${name} STATIC ${ROOM_SOURCES})
  target_include_directories(drapewright_${name} PUBLIC ${PROJECT_SOURCE_DIR})
  target_link_libraries(drapewright_${name} PUBLIC ${ROOM_USES} ${ROOM_LIBRARIES}
                        PRIVATE drapewright_flags)
endfunction()

# drapewright_test(name SOURCES a.cpp ... USES room ... [LIBRARIES target ...])
# A GoogleTest program whose cases ctest lists one by one.
function(drapewright_test name)
  cmake_parse_arguments(TEST "" "" "SOURCES;USES;LIBRARIES" ${ARGN})
  list(TRANSFORM TEST_USES PREPEND drapewright_)
  add_executable(${name} ${TEST_SOURCES})
  target_include_directories(${name} PRIVATE ${PROJECT_SOURCE_DIR})
  target_link_libraries(${name} PRIVATE ${TEST_USES} ${TEST_LIBRARIES} drapewright_places
                        drapewright_flags GTest::gmock GTest::gtest_main)
  gtest_discover_tests(${name} DISCOVERY_MODE PRE_TEST TEST_PREFIX ${name}:
                       PROPERTIES TIMEOUT 300)
endfunction()
