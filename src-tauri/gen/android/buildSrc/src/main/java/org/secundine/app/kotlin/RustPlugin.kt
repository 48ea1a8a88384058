import com.android.build.api.dsl.ApplicationExtension
import org.gradle.api.DefaultTask
import org.gradle.api.Plugin
import org.gradle.api.Project
import org.gradle.api.tasks.Copy
import org.gradle.kotlin.dsl.configure
import org.gradle.kotlin.dsl.get

const val TASK_GROUP = "rust"

open class Config {
    lateinit var rootDirRel: String
}

/** From Tauri's template, taught that beside the ABIs there is a dimension `network`. */
open class RustPlugin : Plugin<Project> {
    private lateinit var config: Config

    override fun apply(project: Project) = with(project) {
        config = extensions.create("rust", Config::class.java)

        val defaultAbiList = listOf("arm64-v8a", "armeabi-v7a", "x86", "x86_64")
        val abiList = (findProperty("abiList") as? String)?.split(',') ?: defaultAbiList

        val defaultArchList = listOf("arm64", "arm", "x86", "x86_64")
        val archList = (findProperty("archList") as? String)?.split(',') ?: defaultArchList

        val targetsList = (findProperty("targetList") as? String)?.split(',') ?: listOf("aarch64", "armv7", "i686", "x86_64")

        // Tauri's command line knows one dimension, and asks for `assembleUniversalRelease`. Which of the two that is, is said
        // beside it; who says nothing gets the one without the network.
        val networks = listOf("offline", "sync")
        val network = providers.environmentVariable("SECUNDINE_FLAVOUR").getOrElse("offline")
        require(network in networks) { "SECUNDINE_FLAVOUR is offline or sync, not $network" }

        extensions.configure<ApplicationExtension> {
            @Suppress("UnstableApiUsage")
            flavorDimensions.add("abi")
            productFlavors {
                create("universal") {
                    dimension = "abi"
                    ndk {
                        abiFilters += abiList
                    }
                }
                defaultArchList.forEachIndexed { index, arch ->
                    create(arch) {
                        dimension = "abi"
                        ndk {
                            abiFilters.add(defaultAbiList[index])
                        }
                    }
                }
            }
        }

        afterEvaluate {
            for (profile in listOf("debug", "release")) {
                val profileCapitalized = capitalized(profile)
                for (arch in listOf("universal") + defaultArchList) {
                    askedByTauri(arch, network, profile)
                }
                val buildTask = tasks.maybeCreate(
                    "rustBuildUniversal$profileCapitalized",
                    DefaultTask::class.java
                ).apply {
                    group = TASK_GROUP
                    description = "Build dynamic library in $profile mode for all targets"
                }

                for (one in networks) {
                    tasks["mergeUniversal${capitalized(one)}${profileCapitalized}JniLibFolders"].dependsOn(buildTask)
                }

                for (targetPair in targetsList.withIndex()) {
                    val targetName = targetPair.value
                    val targetArch = archList[targetPair.index]
                    val targetArchCapitalized = capitalized(targetArch)
                    val targetBuildTask = project.tasks.register(
                        "rustBuild$targetArchCapitalized$profileCapitalized",
                        BuildTask::class.java
                    ) {
                        group = TASK_GROUP
                        description = "Build dynamic library in $profile mode for $targetArch"
                        rootDirRel = config.rootDirRel
                        projectDir = project.projectDir.path
                        target = targetName
                        release = profile == "release"
                    }

                    buildTask.dependsOn(targetBuildTask)
                    for (one in networks) {
                        tasks["merge$targetArchCapitalized${capitalized(one)}${profileCapitalized}JniLibFolders"]
                            .dependsOn(targetBuildTask)
                    }
                }
            }
        }
    }

    /** The tasks that Tauri's command line calls by name; each leaves its file where that looks for it. */
    private fun Project.askedByTauri(arch: String, network: String, profile: String) {
        val variant = "${capitalized(arch)}${capitalized(network)}${capitalized(profile)}"
        val plain = "${capitalized(arch)}${capitalized(profile)}"
        val outputs = layout.buildDirectory.dir("outputs")
        tasks.register("assemble$plain", Copy::class.java) {
            dependsOn("assemble$variant")
            from(outputs.map { it.dir("apk/$arch${capitalized(network)}/$profile") }) { include("*.apk") }
            into(outputs.map { it.dir("apk/$arch/$profile") })
            rename { it.replace("-$network-", "-") }
        }
        tasks.register("bundle$plain", Copy::class.java) {
            dependsOn("bundle$variant")
            from(outputs.map { it.dir("bundle/$arch${capitalized(network)}${capitalized(profile)}") }) { include("*.aab") }
            into(outputs.map { it.dir("bundle/$arch${capitalized(profile)}") })
            rename { it.replace("-$network-", "-") }
        }
    }

    private fun capitalized(word: String) = word.replaceFirstChar { it.uppercase() }
}
