#!/usr/bin/env bash
# Builds the image of a Kafka broker for the container test, from nothing but this machine's JDK and C library and the
# broker's jars of the Maven build: no image registry is asked. Takes the tag as its only argument.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
tag=${1:-sealspan/kafka-broker:test}
jars=$here/../../../broker/target/lib
jdk=$(dirname "$(dirname "$(readlink -f "$(command -v javac)")")")

if ! ls "$jars"/kafka_2.13-*.jar >/dev/null 2>&1; then
  echo "No broker jars in ingest/broker/target/lib. Run first: mvn -pl ingest/broker package" >&2
  exit 1
fi

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
root=$work/root
mkdir -p "$root"/{bin,dev,etc/kafka/docker,opt/kafka,proc,root,sys,tmp,var/lib/kafka}
chmod 1777 "$root/tmp"

# java.desktop: without it the broker dies for want of java.beans.
modules=java.base,java.desktop,java.logging,java.management,java.naming,java.rmi,java.scripting,java.security.jgss
modules+=,java.security.sasl,java.sql,java.xml,jdk.crypto.ec,jdk.jfr,jdk.management,jdk.net,jdk.unsupported
"$jdk/bin/jlink" --add-modules "$modules" --output "$root/opt/java" \
  --strip-java-debug-attributes --no-header-files --no-man-pages
cp -L /bin/bash "$root/bin/bash"
ln -s bash "$root/bin/sh"
for tool in cat chmod mkdir rm sleep; do
  cp -L "$(command -v "$tool")" "$root/bin/$tool"
done

# The shared libraries that these programs need, found by asking the dynamic linker.
find "$root/bin" "$root/opt/java" -type f \( -name '*.so' -o -perm -u+x \) -exec ldd {} + 2>/dev/null \
  | grep -oE '/[^ ():]+' | grep -v "^$work" | sort -u \
  | while read -r library; do
      mkdir -p "$root$(dirname "$library")"
      cp -L "$library" "$root$library"
    done

echo 'root:x:0:0:root:/root:/bin/bash' > "$root/etc/passwd"
echo 'root:x:0:' > "$root/etc/group"
echo 'hosts: files dns' > "$root/etc/nsswitch.conf"
cp -r "$jars" "$root/opt/kafka/lib"
install -m 755 "$here/run" "$root/etc/kafka/docker/run"
install -m 644 "$here/log4j2.properties" "$root/etc/kafka/log4j2.properties"
tar -C "$root" -c . \
  | docker import -c 'ENV PATH=/opt/java/bin:/bin LANG=C.UTF-8' -c 'EXPOSE 9092' \
      -c 'CMD ["/etc/kafka/docker/run"]' - "$tag"
