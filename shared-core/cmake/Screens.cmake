# What both apps' screens share in the build: Qt 6 from Debian 12, the QML modules, the typeface. Nothing of the rest of
# the tree needs Qt: with BULLACE_SCREENS=OFF none is looked for.
option(BULLACE_SCREENS "Build the tablet's and the desk's screens (needs Qt 6.4)" ON)
define_property(GLOBAL PROPERTY BULLACE_QML_MODULES BRIEF_DOCS "The targets that bullace_qml_module made")
if(NOT BULLACE_SCREENS)
    return()
endif()

find_package(Qt6 6.4 REQUIRED COMPONENTS Core Gui LinguistTools Multimedia PrintSupport Qml Quick Svg Test Widgets)
find_package(QCustomPlotQt6 REQUIRED) # Debian's build of it for Qt 6
find_package(ZXing 1.4 REQUIRED)
find_library(BULLACE_QRENCODE qrencode REQUIRED) # comes without a CMake file
# One folder with every module's qmldir: for qmllint, and so that no program can be called like a module's folder.
set(QT_QML_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/qml)

# bullace_qml_module(NAME URI FOLDER PREFIX [PAGES FOLDER] [DEPENDENCIES URI…]): a static library of all .cpp, .hpp and
# .qml files below FOLDER (but main.cpp), and of the .qml files below PAGES, that is the QML module URI. Its headers are seen as "PREFIX/…" like those of any layer; its QML
# files land side by side in the module, whatever folder they lie in. It has no plugin: a program names the function
# qml_register_types_URI (dots written as underscores), as registerControls in quick/theme.cpp does, which keeps the
# linker from dropping the types; the import of the module then registers them. Without a plugin Qt 6.4 finds a module's
# C++ types from its own QML files only by chance: each of them imports its own URI.
# DEPENDENCIES names the modules of ours whose types it shows in properties, so that qmllint finds them.
function(bullace_qml_module name uri folder prefix)
    cmake_parse_arguments(of "" "PAGES" "DEPENDENCIES" ${ARGN})
    file(GLOB_RECURSE sources CONFIGURE_DEPENDS ${folder}/*.cpp ${folder}/*.hpp)
    list(FILTER sources EXCLUDE REGEX "/main\\.cpp$")
    file(GLOB_RECURSE pages CONFIGURE_DEPENDS ${folder}/*.qml)
    if(of_PAGES)
        file(GLOB_RECURSE more CONFIGURE_DEPENDS ${of_PAGES}/*.qml)
        list(APPEND pages ${more})
    endif()
    foreach(page IN LISTS pages)
        get_filename_component(file_name ${page} NAME)
        set_source_files_properties(${page} PROPERTIES QT_RESOURCE_ALIAS ${file_name})
        file(STRINGS ${page} singleton REGEX "^pragma Singleton")
        if(singleton)
            set_source_files_properties(${page} PROPERTIES QT_QML_SINGLETON_TYPE TRUE)
        endif()
    endforeach()

    # Compiling QML ahead costs three seconds a file; without it qmllint and the tests are what finds a slip.
    qt_add_library(${name} STATIC)
    set_target_properties(${name} PROPERTIES AUTOMOC ON)
    qt_add_qml_module(${name} URI ${uri} VERSION 1.0 RESOURCE_PREFIX /qt/qml NO_PLUGIN NO_CACHEGEN
        SOURCES ${sources} QML_FILES ${pages} DEPENDENCIES QtQuick ${of_DEPENDENCIES})
    bullace_include_root(${name} ${folder} ${prefix})
    target_link_libraries(${name} PUBLIC Qt6::Core Qt6::Gui Qt6::Qml Qt6::Quick PRIVATE bullace_options)
    bullace_generated_registration(${name} "${sources}")
    set_property(GLOBAL APPEND PROPERTY BULLACE_QML_MODULES ${name})
endfunction()

# What Qt writes to register the types includes headers by their bare names, and is not held to our warnings.
function(bullace_generated_registration name sources)
    set(folders "")
    foreach(source IN LISTS sources)
        get_filename_component(folder ${source} DIRECTORY)
        list(APPEND folders ${folder})
    endforeach()
    list(REMOVE_DUPLICATES folders)
    target_include_directories(${name} PRIVATE ${folders})
    string(TOLOWER ${name} lower)
    set_source_files_properties(${CMAKE_CURRENT_BINARY_DIR}/${lower}_qmltyperegistrations.cpp
        TARGET_DIRECTORY ${name} PROPERTIES COMPILE_OPTIONS -w SKIP_LINTING ON)
endfunction()

# The typeface is compiled in (SIL Open Font License), so that a screen looks the same on every tablet: B612 was drawn
# for cockpits and keeps 1, l and I, and 0 and O, apart. Where the package is missing the system's own face is taken.
function(bullace_typeface target)
    foreach(face IN ITEMS B612-Regular B612-Bold)
        find_file(BULLACE_${face} ${face}.otf PATHS /usr/share/fonts/opentype/b612 NO_DEFAULT_PATH)
        if(NOT BULLACE_${face})
            message(WARNING "The typeface ${face} is not here (Debian's fonts-b612): the system's own is taken")
            return()
        endif()
        set_source_files_properties(${BULLACE_${face}} PROPERTIES QT_RESOURCE_ALIAS ${face}.otf)
        list(APPEND faces ${BULLACE_${face}})
    endforeach()
    # The desk sets longer texts, with and without weight. B612 has a regular weight, too, but where its package is
    # installed its monospaced sister claims the same name, and is what Qt 6.4 then takes.
    foreach(face IN ITEMS DejaVuSans DejaVuSans-Bold)
        find_file(BULLACE_${face} ${face}.ttf PATHS /usr/share/fonts/truetype/dejavu NO_DEFAULT_PATH)
        if(NOT BULLACE_${face})
            message(WARNING "The typeface ${face} is not here (Debian's fonts-dejavu-core): the system's own is taken")
            continue()
        endif()
        set_source_files_properties(${BULLACE_${face}} PROPERTIES QT_RESOURCE_ALIAS ${face}.ttf)
        list(APPEND faces ${BULLACE_${face}})
    endforeach()
    qt_add_resources(${target} ${target}_typeface PREFIX /bullace/typeface FILES ${faces})
endfunction()

# bullace_languages(TARGET): the texts of shared-core/quick/languages, compiled into the target as :/bullace/languages. The
# build only reads the .ts files; `cmake --build … --target update_languages` takes new texts of the sources up into them.
function(bullace_languages target)
    set(folder ${CMAKE_SOURCE_DIR}/shared-core/quick/languages)
    file(GLOB texts CONFIGURE_DEPENDS ${folder}/*.ts)
    set(compiled "")
    foreach(text IN LISTS texts)
        get_filename_component(language ${text} NAME_WE)
        set(made ${CMAKE_BINARY_DIR}/languages/${language}.qm)
        add_custom_command(OUTPUT ${made} DEPENDS ${text}
            COMMAND Qt6::lrelease -silent ${text} -qm ${made} VERBATIM)
        set_source_files_properties(${made} PROPERTIES QT_RESOURCE_ALIAS ${language}.qm GENERATED ON)
        list(APPEND compiled ${made})
    endforeach()
    file(MAKE_DIRECTORY ${CMAKE_BINARY_DIR}/languages)
    qt_add_resources(${target} ${target}_languages PREFIX /bullace/languages FILES ${compiled})
    # What lupdate is told, here and in the test that nothing is missing. It has to find the headers, or it takes a class
    # for one without its namespace, and that class's texts are never found.
    set(words -locations none -no-obsolete -tr-function-alias QT_TRANSLATE_NOOP+=BULLACE_SENTENCE)
    foreach(layer IN ITEMS bullace_quick bullace_camera bullace_tablet_ui bullace_paper bullace_plots bullace_desk_ui)
        list(APPEND words -I${CMAKE_BINARY_DIR}/include/${layer})
    endforeach()
    foreach(part IN ITEMS shared-core/core shared-core/quick mobile/viewmodels mobile/pages mobile/camera
            desktop/viewmodels desktop/pages desktop/paper desktop/plots)
        if(EXISTS ${CMAKE_SOURCE_DIR}/${part})
            list(APPEND words ${CMAKE_SOURCE_DIR}/${part})
        endif()
    endforeach()
    set_property(GLOBAL PROPERTY BULLACE_LUPDATE_WORDS "${words}")
    add_custom_target(update_languages
        COMMAND Qt6::lupdate ${words} -ts ${folder}/bullace_es.ts
        COMMAND Qt6::lupdate ${words} -pluralonly -ts ${folder}/bullace_en.ts VERBATIM)
endfunction()

# bullace_lint_test(): `ctest -R qmllint`; fails on a warning in any QML file of the modules made so far.
function(bullace_lint_test)
    get_property(modules GLOBAL PROPERTY BULLACE_QML_MODULES)
    if(NOT modules)
        return()
    endif()
    list(TRANSFORM modules APPEND _qmllint OUTPUT_VARIABLE targets)
    add_test(NAME qmllint COMMAND ${CMAKE_COMMAND} --build ${CMAKE_BINARY_DIR} --target ${targets})
    set_tests_properties(qmllint PROPERTIES LABELS "style;screens" TIMEOUT 600 RUN_SERIAL ON)
endfunction()
