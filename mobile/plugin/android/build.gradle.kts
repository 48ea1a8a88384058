import org.jetbrains.kotlin.gradle.dsl.JvmTarget

plugins {
    id("com.android.library")
    id("org.jetbrains.kotlin.android")
}

android {
    namespace = "org.secundine.phone"
    compileSdk = 36

    defaultConfig {
        // As the program itself: channels of notifications, strengths of vibration, files that are memory.
        minSdk = 26
        consumerProguardFiles("consumer-rules.pro")
    }

    sourceSets {
        // What UniFFI made of the core, for the tile.
        getByName("main").java.srcDir("../../bindings/kotlin")
    }

    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_1_8
        targetCompatibility = JavaVersion.VERSION_1_8
    }
}

kotlin {
    compilerOptions {
        jvmTarget = JvmTarget.JVM_1_8
    }
}

dependencies {
    implementation("androidx.appcompat:appcompat:1.7.1")
    implementation("net.java.dev.jna:jna:5.17.0@aar")
    implementation(project(":tauri-android"))
    testImplementation("junit:junit:4.13.2")
    testImplementation(kotlin("test"))
}
