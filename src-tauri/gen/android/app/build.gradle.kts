import java.util.Properties
import org.jetbrains.kotlin.gradle.dsl.JvmTarget

plugins {
    id("com.android.application")
    id("org.jetbrains.kotlin.android")
    id("rust")
}

val tauriProperties = Properties().apply {
    val propFile = file("tauri.properties")
    if (propFile.exists()) {
        propFile.inputStream().use { load(it) }
    }
}

android {
    // As Tauri's own library. The template says 37, which nothing here uses.
    compileSdk = 36
    ndkVersion = "28.2.13676358"
    namespace = "org.secundine.app"
    defaultConfig {
        applicationId = "org.secundine.app"
        // Android 8.0: the oldest with channels of notifications and strengths of vibration. Its web view is a program of its
        // own that is renewed there up to version 138; the page needs 108 or newer (`dvh` lengths, `:has`, ES2022).
        minSdk = 26
        // The level whose signatures the native code is held against. A newer one changes behaviour: try it on a phone first.
        targetSdk = 36
        versionCode = tauriProperties.getProperty("tauri.android.versionCode", "1").toInt()
        versionName = tauriProperties.getProperty("tauri.android.versionName", "1.0")
    }
    // The same program, key and data; only the network differs. Its manifests: src/offline and src/sync.
    flavorDimensions.add("network")
    productFlavors {
        create("offline") { dimension = "network" }
        create("sync") { dimension = "network" }
    }
    buildTypes {
        getByName("debug") {
            isDebuggable = true
            isJniDebuggable = true
            isMinifyEnabled = false
            packaging {
                jniLibs.keepDebugSymbols.add("*/arm64-v8a/*.so")
                jniLibs.keepDebugSymbols.add("*/armeabi-v7a/*.so")
                jniLibs.keepDebugSymbols.add("*/x86/*.so")
                jniLibs.keepDebugSymbols.add("*/x86_64/*.so")
            }
        }
        // Left unsigned: mobile/build.sh signs with apksigner, so that the key and its passwords never reach Gradle, whose
        // daemon and cache outlive the build.
        getByName("release") {
            isDebuggable = false
            optimization {
                enable = true
            }
            // The commit's number in the package would make two builds of the same sources differ.
            vcsInfo.include = false
            proguardFiles(
                *fileTree(".") {
                    include("**/*.pro")
                    exclude("build/**")
                }.files.toTypedArray()
            )
        }
    }
    // A list of the libraries, sealed to a store's key: of no use here, and nobody else can rebuild it.
    dependenciesInfo {
        includeInApk = false
        includeInBundle = false
    }
    packaging {
        // Libraries lie uncompressed and on page borders in the package, and are read from there.
        jniLibs.useLegacyPackaging = false
    }
    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_1_8
        targetCompatibility = JavaVersion.VERSION_1_8
    }
    buildFeatures {
        buildConfig = true
    }
}

kotlin {
    compilerOptions {
        jvmTarget = JvmTarget.JVM_1_8
    }
}

rust {
    rootDirRel = "../../../"
}

dependencies {
    implementation("androidx.webkit:webkit:1.14.0")
    implementation("androidx.appcompat:appcompat:1.7.1")
    implementation("androidx.activity:activity-ktx:1.10.1")
    implementation("com.google.android.material:material:1.12.0")
    implementation("androidx.lifecycle:lifecycle-process:2.10.0")
}

apply(from = file("tauri.build.gradle.kts"))
