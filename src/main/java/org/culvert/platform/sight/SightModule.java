package org.culvert.platform.sight;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.BeanDescription;
import com.fasterxml.jackson.databind.SerializationConfig;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.BeanPropertyWriter;
import com.fasterxml.jackson.databind.ser.BeanSerializerModifier;
import java.util.List;
import java.util.Set;
import org.culvert.platform.InvalidException;

/** Has every property of our own records ask the table before it is written. */
public final class SightModule extends SimpleModule {
    /**
     * Attribute of a writer whose document is kept by the server and shown to nobody as it is, such as the result of a run:
     * it writes everything.
     */
    public static final String KEPT = "org.culvert.kept";

    private static final long serialVersionUID = 1;

    /** Parts of problems, which say what was wrong with what the asker sent. */
    private static final Set<Class<?>> PROBLEMS = Set.of(InvalidException.FieldError.class);

    SightModule(Sight sight) {
        super("who sees what");
        setSerializerModifier(new BeanSerializerModifier() {
            private static final long serialVersionUID = 1;

            @Override
            public List<BeanPropertyWriter> changeProperties(
                    SerializationConfig config, BeanDescription description, List<BeanPropertyWriter> properties) {
                Class<?> bean = description.getBeanClass();
                return properties.stream()
                        .map(property -> PROBLEMS.contains(bean)
                                ? new SentProperty(property)
                                : isOurs(bean) ? new SightedProperty(property, bean, sight) : property)
                        .toList();
            }
        });
    }

    static boolean isOurs(Class<?> type) {
        return type.isRecord() && type.getName().startsWith("org.culvert.") && !PROBLEMS.contains(type);
    }

    /** A part of a problem: whatever it holds came from the asker. */
    private static final class SentProperty extends BeanPropertyWriter {
        private static final long serialVersionUID = 1;

        SentProperty(BeanPropertyWriter base) {
            super(base);
        }

        @Override
        public void serializeAsField(Object bean, JsonGenerator generator, SerializerProvider provider)
                throws Exception {
            Object before = provider.getAttribute(KEPT);
            provider.setAttribute(KEPT, true);
            try {
                super.serializeAsField(bean, generator, provider);
            } finally {
                provider.setAttribute(KEPT, before);
            }
        }
    }
}
